// go-licences.mjs FILE: writes the list of what of Go ends in the browser's core and in the service, with version, licence and its text:
// the runtime and standard library, and every module beside our own. GO names the compiler.
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const [file] = process.argv.slice(2);
const root = new URL('../..', import.meta.url).pathname;
const go = (...args) =>
  execFileSync(process.env.GO ?? 'go', args, {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, GOOS: 'js', GOARCH: 'wasm' },
    maxBuffer: 64 << 20,
  }).trim();

/** What the texts of the usual licences say, and their SPDX identifiers. */
const kinds = [
  [/Neither the name of/, 'BSD-3-Clause'],
  [/Redistribution and use in source and binary forms/, 'BSD-2-Clause'],
  [/Apache License\s+Version 2\.0/, 'Apache-2.0'],
  [/Permission is hereby granted, free of charge/, 'MIT'],
  [/Permission to use, copy, modify, and\/or distribute/, 'ISC'],
  [/Mozilla Public License Version 2\.0/i, 'MPL-2.0'],
];

function part(name, version, folder) {
  const found = readdirSync(folder).find((f) => /^(licen[cs]e|copying)(\.(md|txt))?$/i.test(f));
  const text = found ? readFileSync(join(folder, found), 'utf8').trim() : '';
  const licence = kinds.find(([words]) => words.test(text))?.[1];
  if (!licence) throw new Error(`${name}: ships without a licence that can be told`);
  return { name, version, licence, text };
}

const [version, home] = go('env', 'GOVERSION', 'GOROOT').split('\n');
const format = '{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}} {{.Dir}}{{end}}{{end}}';
const modules = new Set(
  go('list', '-deps', '-f', format, './wasm/browser/...', './wasm/edge').split('\n').filter(Boolean),
);
const parts = [
  part('Go, runtime and standard library', version.replace(/^go/, ''), home),
  ...[...modules].map((line) => part(...line.split(' '))),
];
writeFileSync(file, `${JSON.stringify(parts, null, 2)}\n`);
