/** The parts of others that this build ships: in a file beside the page, or inside the single file. */
export interface LicencedPart {
  name: string;
  version: string;
  /** As the part names it, mostly an SPDX identifier. */
  licence: string;
  text: string;
}

/** Where the single file holds the list. */
export const inside = 'licences';

export async function readParts(): Promise<LicencedPart[]> {
  const held = document.getElementById(inside)?.textContent;
  if (held) return JSON.parse(held) as LicencedPart[];
  const response = await fetch(new URL('licences.json', document.baseURI));
  if (!response.ok) throw new Error(`licences.json: ${response.status}`);
  return (await response.json()) as LicencedPart[];
}
