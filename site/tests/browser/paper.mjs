// What a PDF holds, as far as the tests ask.
import { inflateSync } from 'node:zlib';

/** A PDF with whatever is packed in it unpacked: some writers pack the list of pages, too. */
function unpacked(paper) {
  const raw = paper.toString('latin1');
  const parts = [raw];
  for (const { 1: packed } of raw.matchAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g)) {
    try {
      parts.push(inflateSync(Buffer.from(packed, 'latin1')).toString('latin1'));
    } catch {
      // a picture or a font packed in another way
    }
  }
  return parts.join('\n');
}

/** How many pages it has. */
export const pagesOf = (paper) => unpacked(paper).match(/\/Type\s*\/Page\b/g)?.length ?? 0;
