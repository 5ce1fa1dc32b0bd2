/** When a field or a block counts, and which blocks come along with a choice. */
import type { Block, Catalogue, Condition } from '../generated/contract';
import type { JobDocument } from '../state/job.svelte';
import { freshBlock } from '../state/lay';
import { templateOf } from '../state/path';

type At = (path: string) => unknown;

/** Whether the field or block at a path has an effect: what it hangs on stands beside it. */
export function isUsed(condition: Condition | null | undefined, path: string, at: At): boolean {
  if (!condition) return true;
  return condition.in.includes(String(at(path.replace(/[^.]+$/, condition.path))));
}

/** Blocks that a choice cannot do without, by the end of their path: chosen, they are there. */
const companions: readonly string[] = ['transfer.nozzles'];

/** The blocks beside a field that its new value asks for and that are not there yet. */
export function companionsOf(path: string, blocks: readonly Block[], at: At): string[] {
  const parent = path.slice(0, path.lastIndexOf('.'));
  return blocks
    .filter((b) => b.path.slice(0, b.path.lastIndexOf('.')) === templateOf(parent))
    .filter((b) => companions.some((end) => b.path.endsWith(end)))
    .map((b) => ({ b, path: `${parent}${b.path.slice(b.path.lastIndexOf('.'))}` }))
    .filter(({ b, path: beside }) => at(beside) === null && isUsed(b.used_when, beside, at))
    .map(({ path: beside }) => beside);
}

/** Makes a choice, and puts in place what it cannot do without. */
export function choose(desk: { job: JobDocument; catalogue: Catalogue }, path: string, value: string): void {
  desk.job.together(path, () => {
    desk.job.set(path, value);
    for (const beside of companionsOf(path, desk.catalogue.blocks, (p) => desk.job.at(p))) {
      desk.job.toggle(beside, true, () => freshBlock(desk.catalogue, templateOf(beside)));
    }
  });
}
