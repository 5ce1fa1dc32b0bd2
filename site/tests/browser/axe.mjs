// What axe-core says of the page as it stands.
import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Finds nothing, or says what and where; without names rules that do not count. */
export async function clean(page, without = []) {
  // Into the page past its security policy, which would not let a script in.
  await page.evaluate(axe);
  const found = await page.evaluate(async (off) => {
    const rules = Object.fromEntries(off.map((rule) => [rule, { enabled: false }]));
    const { violations } = await globalThis.axe.run(document, { resultTypes: ['violations'], rules });
    return violations.map((v) => `${v.id}: ${v.help}\n${v.nodes.map((n) => `  ${n.target}\n    ${n.failureSummary}`).join('\n')}`);
  }, without);
  assert.equal(found.join('\n'), '');
}
