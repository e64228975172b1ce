import { RuleTester } from 'eslint';
import ts from 'typescript-eslint';
import { afterAll, describe, it } from 'vitest';
import { layers } from './layers.js';

RuleTester.describe = describe;
RuleTester.it = it;
(RuleTester as unknown as { afterAll: typeof afterAll }).afterAll = afterAll;

const tester = new RuleTester({ languageOptions: { parser: ts.parser as never } });
const engine = '/project/src/lib/engine/grading/piles.ts';
const state = '/project/src/lib/state/job.svelte.ts';
const ui = '/project/src/lib/ui/Slab.svelte';
const page = '/project/src/routes/+page.svelte';

tester.run('layers', layers, {
  valid: [
    { filename: engine, code: "import { x } from '../thickness/index.ts'" },
    { filename: engine, code: "import q from '@stdlib/stats-base-dists-t-quantile'" },
    { filename: state, code: "import { DexieStore } from '$lib/storage'" },
    { filename: state, code: "const load = () => import('$lib/engine/estimates')" },
    { filename: ui, code: "import type { JobView } from '$lib/journal'" },
    { filename: page, code: "import { useJob } from '$lib/state'" }
  ],
  invalid: [
    {
      filename: engine,
      code: "import { Dexie } from 'dexie'",
      errors: [{ message: /engine may not import dexie.*pure numbers/ }]
    },
    {
      filename: engine,
      code: "import { current } from '$lib/journal'",
      errors: [{ message: /engine may not import \$lib\/journal/ }]
    },
    {
      filename: ui,
      code: "import { DexieStore } from '$lib/storage'",
      errors: [{ message: /can show what is not saved/ }]
    },
    {
      filename: page,
      code: "const store = import('$lib/storage')",
      errors: [{ message: /Pages are thin/ }]
    },
    {
      filename: state,
      code: "import { append } from '../storage/dexie-store.ts'",
      errors: [{ message: /by a relative path/ }]
    },
    {
      filename: state,
      code: "import { fold } from '$lib/journal/fold.ts'",
      errors: [{ message: /only door/ }]
    }
  ]
});
