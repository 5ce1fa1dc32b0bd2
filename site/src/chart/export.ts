/**
 * Pictures as files that look the same anywhere: on white, in ink, with every colour and font written into them, and with the title,
 * axes and key that stand around them on the page.
 */
import { drawSign, signHeight, signWidth, type KeyEntry } from './signs';
import { element } from './textures';
import { textWidth } from './measure';

/** What stands around a picture on the page and has to go with it. */
export interface Around {
  title: string;
  yLabel: string;
  xLabel: string;
  key: readonly KeyEntry[];
  /** The picture in words. */
  alt: string;
}

const border = 16;
const titleSize = 15;
const labelSize = 12;
const keyRow = 19;
const keyGap = 16;

/** The picture with its surroundings, as a drawing of its own that has no link to the page. */
export function composed(picture: SVGElement, around: Around): SVGElement {
  const [inner, tall] = [sizeOf(picture, 'width'), sizeOf(picture, 'height')];
  const width = inner + 2 * border;
  const made = element('svg', { width, height: 1, xmlns: 'http://www.w3.org/2000/svg' });
  made.append(named('title', around.title), named('desc', around.alt));
  const ground = element('rect', { width, height: 1, fill: '#fff' });
  made.append(ground);
  let y = border;
  for (const line of broken(around.title, titleSize, 650, inner)) {
    y += titleSize + 3;
    made.append(written(line, border, y - 3, titleSize, 650, 'var(--ink)'));
  }
  if (around.yLabel) {
    y += labelSize + 5;
    made.append(written(around.yLabel, border, y - 2, labelSize, 400, 'var(--muted)'));
  }
  const inside = element('svg', { x: border, y: y + 6, width: inner, height: tall, overflow: 'visible' });
  const copy = picture.cloneNode(true) as SVGElement;
  const box = picture.getAttribute('viewBox');
  if (box) inside.setAttribute('viewBox', box);
  const size = picture.getAttribute('font-size') ?? getComputedStyle(picture).fontSize;
  inside.setAttribute('font-size', size);
  inside.setAttribute('fill', 'currentColor');
  inside.append(...copy.childNodes);
  made.append(inside);
  y += 6 + tall;
  if (around.xLabel) {
    y += labelSize + 5;
    const label = written(around.xLabel, width - border, y - 2, labelSize, 400, 'var(--muted)');
    label.setAttribute('text-anchor', 'end');
    made.append(label);
  }
  let x = border;
  if (around.key.length > 0) y += 10;
  for (const { sign, words } of around.key) {
    const need = signWidth + 6 + textWidth(words, labelSize);
    if (x > border && x + need > width - border) [x, y] = [border, y + keyRow];
    const place = element('g', { transform: `translate(${x} ${y})` });
    place.append(drawSign(sign), written(words, signWidth + 6, signHeight - 3, labelSize, 400, 'var(--ink)'));
    made.append(place);
    x += need + keyGap;
  }
  if (around.key.length > 0) y += keyRow;
  const height = Math.ceil(y + border);
  made.setAttribute('height', String(height));
  made.setAttribute('viewBox', `0 0 ${width} ${height}`);
  ground.setAttribute('height', String(height));
  return made;
}

/** The longer texts of a title in lines that fit. */
function broken(words: string, size: number, weight: number, width: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && textWidth(longer, size, weight) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

function written(
  words: string,
  x: number,
  y: number,
  size: number,
  weight: number,
  fill: string,
): SVGElement {
  const made = element('text', { x, y, 'font-size': size, 'font-weight': weight, fill });
  made.textContent = words;
  return made;
}

function named(tag: 'title' | 'desc', words: string): SVGElement {
  const made = element(tag, {});
  made.textContent = words;
  return made;
}

const sizeOf = (svg: SVGElement, side: 'width' | 'height'): number =>
  Number(svg.getAttribute(side)) || svg.getBoundingClientRect()[side];

/** What a shape takes from style sheets and variables, and what a text takes beside it. */
const ofShapes = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'stroke-linecap',
  'stroke-opacity',
  'stroke-miterlimit',
  'paint-order',
  'opacity',
];
const ofTexts = ['font-family', 'font-size', 'font-weight', 'font-style', 'text-anchor'];
/** What a browser takes where nothing is said, so that it need not be said. */
const usual: Readonly<Record<string, string>> = {
  'fill-opacity': '1',
  'stroke-dasharray': 'none',
  'stroke-linejoin': 'miter',
  'stroke-linecap': 'butt',
  'stroke-opacity': '1',
  'stroke-miterlimit': '4',
  'paint-order': 'normal',
  opacity: '1',
  'font-style': 'normal',
  'text-anchor': 'start',
};
const shapes = 'path, line, rect, circle, ellipse, polygon, polyline, text, tspan';

/**
 * Writes the colours and fonts that a drawing takes from the page into it. They are taken as for print: light, ink on white,
 * whatever theme is chosen. The drawing is put on the page out of sight for it, since only there they are known.
 */
function settled(drawing: SVGElement): SVGElement {
  const host = document.createElement('div');
  host.className = 'on-paper';
  host.append(drawing);
  document.body.append(host);
  // Variables are settled at the root; nothing is painted before it is as it was.
  const { dataset } = document.documentElement;
  const { theme } = dataset;
  dataset.theme = 'light';
  try {
    const found = [...drawing.querySelectorAll(shapes)].map((shape) => {
      const style = getComputedStyle(shape);
      const of = shape.matches('text, tspan') ? [...ofShapes, ...ofTexts] : ofShapes;
      return { shape, values: of.map((name) => [name, style.getPropertyValue(name)] as const) };
    });
    for (const { shape, values } of found) {
      const bare = values.some(([name, value]) => name === 'stroke' && value === 'none');
      for (const [name, value] of values) {
        const idle = value === usual[name] || (bare && name.startsWith('stroke') && name !== 'stroke');
        if (value === '' || idle) shape.removeAttribute(name);
        else shape.setAttribute(name, name === 'stroke-width' || name === 'font-size' ? plain(value) : value);
      }
    }
  } finally {
    host.remove();
    if (theme === undefined) delete dataset.theme;
    else dataset.theme = theme;
  }
  for (const one of [drawing, ...drawing.querySelectorAll('*')]) {
    for (const name of one.getAttributeNames())
      if (name === 'class' || name === 'style' || name === 'role' || name.startsWith('aria-'))
        one.removeAttribute(name);
  }
  // What is inherited and said of groups still names variables of the page; every shape says it itself now.
  for (const one of drawing.querySelectorAll('g, svg'))
    for (const name of ['fill', 'stroke', 'color'])
      if (/var\(|currentColor/.test(one.getAttribute(name) ?? '')) one.removeAttribute(name);
  return drawing;
}

const plain = (length: string): string => length.replace(/^([\d.]+)px$/, '$1');

export interface Exported {
  text: string;
  width: number;
  height: number;
}

/** A picture as the text of an SVG file. */
export function svgOf(picture: SVGElement, around: Around): Exported {
  const drawing = settled(composed(picture, around));
  const text = `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(drawing)}\n`;
  return {
    text,
    width: Number(drawing.getAttribute('width')),
    height: Number(drawing.getAttribute('height')),
  };
}

/** Points of a PNG for each point of the picture. */
export const finer = 2;

/** A picture as the bytes of a PNG file on white. */
export async function pngOf({ text, width, height }: Exported): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [Math.round(width * finer), Math.round(height * finer)];
    const ink = canvas.getContext('2d');
    if (!ink) throw new Error('no canvas');
    ink.fillStyle = '#fff';
    ink.fillRect(0, 0, canvas.width, canvas.height);
    ink.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise<Blob>((resolve, reject) =>
      canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('no picture'))), 'image/png'),
    );
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Hands a file to the browser to keep. */
export function save(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the file by then; a picture of a megabyte would otherwise stay in memory.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
