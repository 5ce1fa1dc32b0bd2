/** Words about the page itself: its updates, its use without a network, the parts it is made of. */
export const offline = {
  waiting: 'A new version of this page is ready.',
  use: 'Use it now',
  useHint: 'Loads the page anew. Your job stays.',
  unsafe: 'This browser does not keep your job: save it to a file first.',
  overtaken:
    'A new version is in use in another window. Save your job to a file, then load this window anew.',
  reload: 'Load anew',

  about: {
    title: 'About this page',
    kept: 'All of it lies on this machine: it opens without a network.',
    fetching: 'It is being put on this machine, to open without a network next time.',
    needs: 'This browser does not keep pages on the machine: opening it again takes the network.',
    inside: 'All of it is in this one file: it needs no network and no server.',
    made: 'Parts of others in it, and their licences',
    lost: 'The list of parts could not be loaded.',
  },
};
