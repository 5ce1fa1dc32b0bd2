// The service natively and in the platform's own runtime: what the command prints, beside the page, and what it refuses. Run by
// `make edge-test`.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { behaviour } from './behaviour.mjs';
import { hostile } from './hostile.mjs';
import { commandPairs, servicePairs } from './pairs.mjs';
import { native, workerd } from './start.mjs';

describe('the command prints the kept answers', commandPairs);

for (const start of [native, workerd])
  describe(start.name, () => {
    let service;
    before(async () => (service = await start()));
    after(() => service?.end());
    const at = () => service;
    describe('answers what the command prints', () => servicePairs(at));
    describe('behaves', () => behaviour(at));
    describe('refuses', () => hostile(at, start === native));
    test('asks nobody', () => assert.equal(service.outside(), ''));
  });
