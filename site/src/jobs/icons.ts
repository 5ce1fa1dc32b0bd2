/** The pictograms of what can be done with jobs, on the grid of page/Icon. */
export const icons = {
  open: 'M2 13V3.500h4l1.500 2H13v2M2 13l2-5.500h11L13 13z',
  save: 'M8 2v8M4.500 7L8 10.500L11.500 7M2.500 13.500h11',
  print: 'M4.500 6V2h7v4M4.500 11H2.500V6h11v5h-2M4.500 9.500h7V14h-7z',
  undo: 'M3 7h6.500a3.500 3.500 0 0 1 0 7H6M6 3.500L2.500 7L6 10.500',
  redo: 'M13 7H6.500a3.500 3.500 0 0 0 0 7H10M10 3.500L13.500 7L10 10.500',
  list: 'M6 4h8M6 8h8M6 12h8M2.500 4h.5M2.500 8h.5M2.500 12h.5',
  compare: 'M2 3h5v10H2zM9 3h5v10H9z',
  link: 'M7 9l2-2M6.500 5L8 3.500a2.800 2.800 0 0 1 4 4L10.500 9M9.500 11L8 12.500a2.800 2.800 0 0 1-4-4L5.500 7',
} as const;
