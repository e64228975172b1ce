import { existsSync, readdirSync } from 'node:fs';
import { RuleTester } from 'eslint';
import ts from 'typescript-eslint';
import { afterAll, describe, expect, it } from 'vitest';
import { layers } from './layers.js';

RuleTester.describe = describe;
RuleTester.it = it;
(RuleTester as unknown as { afterAll: typeof afterAll }).afterAll = afterAll;

const tester = new RuleTester({ languageOptions: { parser: ts.parser as never } });
const lib = '/project/src/lib';
const engine = `${lib}/engine/grading/piles.ts`;
const app = `${lib}/app/job.svelte.ts`;
const ui = `${lib}/ui/Slab.svelte`;
const roof = `${lib}/features/roof/roof.svelte.ts`;
const page = '/project/src/routes/+page.svelte';

/** One import that each room must refuse, and a word of its reason. */
const WRONG: [room: string, source: string, reason: RegExp][] = [
  ['engine', '$lib/journal', /pure numbers/],
  ['journal', '$lib/job', /same bytes on every device/],
  ['job', '$lib/app', /worked out from its view is pure/],
  ['gauge', '$lib/storage', /nothing of storage or screens/],
  ['text', '$lib/journal', /nothing but words/],
  ['storage', '$lib/app', /lose a reading/],
  ['worker', '$lib/storage', /pull the page into it/],
  ['sync', '$lib/app', /between the store and the hub/],
  ['example', '$lib/app', /without a screen/],
  ['ui', '$lib/app', /knows none of them/],
  ['app', '$lib/ui', /knows none of them/],
  ...readdirSync('src/lib/features').map((feature): [string, string, RegExp] => [
    `features/${feature}`,
    feature === 'tags' ? '$lib/features/files' : '$lib/features/tags',
    /moves to job, app or ui/
  ])
];

tester.run('layers', layers, {
  valid: [
    { filename: engine, code: "import { x } from '../thickness/index.ts'" },
    { filename: engine, code: "import q from '@stdlib/stats-base-dists-t-quantile'" },
    { filename: app, code: "import { DexieStore } from '$lib/storage'" },
    { filename: app, code: "const load = () => import('$lib/engine/statistics')" },
    { filename: ui, code: "import type { JobView } from '$lib/journal'" },
    { filename: roof, code: "const load = () => import('$lib/example/roofs')" },
    {
      filename: `${lib}/sync/exchange.ts`,
      code: "import { LIMITS } from '../../hub/protocol.ts'"
    },
    { filename: page, code: "import { JobsScreen } from '$lib/features/jobs'" },
    {
      filename: `${lib}/example/roofs/index.ts`,
      code: "import roofs from '../../../../seeds/roofs.json'"
    }
  ],
  invalid: [
    ...WRONG.map(([room, source, message]) => ({
      filename: `${lib}/${room}/part.ts`,
      code: `import { x } from '${source}'`,
      errors: [{ message }]
    })),
    {
      filename: page,
      code: "const store = import('$lib/storage')",
      errors: [{ message: /its load and one component/ }]
    },
    {
      filename: engine,
      code: "import { Dexie } from 'dexie'",
      errors: [{ message: /engine may not import dexie.*pure numbers/ }]
    },
    {
      filename: `${lib}/features/roof/RoofScreen.svelte`,
      code: "import { DexieStore } from '$lib/storage'",
      errors: [{ message: /can show what is not saved/ }]
    },
    {
      filename: app,
      code: "import { append } from '../storage/dexie-store.ts'",
      errors: [{ message: /by a relative path/ }]
    },
    {
      filename: roof,
      code: "import { tags } from '../tags/index.ts'",
      errors: [{ message: /by a relative path/ }]
    },
    {
      filename: app,
      code: "import { MemoryStore } from '../../../tests/support/memory-store.ts'",
      errors: [{ message: /app may not import/ }]
    },
    {
      filename: app,
      code: "import { fold } from '$lib/journal/fold.ts'",
      errors: [{ message: /only door/ }]
    },
    {
      filename: '/project/src/hub/handler.ts',
      code: "import { readEvent } from '$lib/journal'",
      errors: [{ message: /keeps what it cannot read/ }]
    },
    {
      filename: `${lib}/sync/exchange.ts`,
      code: "import { createHub } from '../../hub/handler.ts'",
      errors: [{ message: /by a relative path/ }]
    },
    {
      filename: `${lib}/attic/part.ts`,
      code: "import { x } from '$lib/journal'",
      errors: [{ message: /name it in lint\/layers\.js/ }]
    }
  ]
});

describe('every folder that the app ships', () => {
  it('is a room that the lint refuses a wrong import in', () => {
    const rooms = readdirSync('src/lib')
      .filter((name) => name !== 'features')
      .concat(readdirSync('src/lib/features').map((name) => `features/${name}`));
    expect(WRONG.map(([room]) => room).sort()).toEqual(rooms.sort());
  });

  it('has one door', () => {
    for (const [room] of WRONG.filter(([room]) => room !== 'engine' && room !== 'text'))
      expect(existsSync(`src/lib/${room}/index.ts`), room).toBe(true);
  });
});
