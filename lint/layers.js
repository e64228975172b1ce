/**
 * The rooms of the program and what each may import. Imports point one way:
 * routes → features → app, ui, example → job → journal → engine.
 */
const PURE = ['job', 'journal', 'engine'];
const SHARED = ['app', 'ui', 'text', 'gauge', 'storage', 'worker', ...PURE];

/** @type {Record<string, string[]>} */
const ROOMS = {
  engine: [],
  journal: ['engine'],
  job: ['journal', 'engine'],
  gauge: ['engine'],
  text: [],
  storage: PURE,
  worker: PURE,
  sync: ['storage', 'hub', ...PURE],
  hub: [],
  example: PURE,
  ui: ['text', 'gauge', ...PURE],
  app: ['storage', 'worker', 'gauge', 'text', 'sync', ...PURE],
  'features/sort': SHARED,
  'features/grades': SHARED,
  'features/roof': [...SHARED, 'example'],
  'features/sizes': SHARED,
  'features/courses': SHARED,
  'features/lay': [...SHARED, 'features/courses'],
  'features/delivery': [...SHARED, 'features/sort'],
  'features/files': SHARED,
  'features/quick': [...SHARED, 'features/sort'],
  'features/tags': SHARED,
  'features/crew': [...SHARED, 'features/jobs'],
  'features/jobs': [...SHARED, 'example'],
  routes: ['features/*', 'app', 'ui', 'text']
};

/** @type {Record<string, string>} */
const REASONS = {
  engine:
    'The engine is pure numbers: it must run in a worker, in tests and in any future app without a browser, so it imports only itself and the agreed numeric libraries.',
  journal:
    'The journal is pure: it must fold the same bytes on every device, so it knows only the engine.',
  job: 'What a job is worked out from its view is pure: it must come out the same in a test, a worker and on every device.',
  gauge:
    'A gauge adapter turns keystrokes and lines into readings and knows nothing of storage or screens.',
  text: 'The catalogue of words knows nothing but words, so that a translator can read it.',
  storage: 'Storage keeps events; if it knew screens, a screen could lose a reading.',
  worker: 'The worker runs what is pure; anything else would pull the page into it.',
  sync: 'An exchange works between the store and the hub, so that a test can hold it without a screen.',
  hub: 'The hub keeps what it cannot read: it knows no event, no view and no engine.',
  example: 'The worked example is events and figures, so that a test can hold it without a screen.',
  ui: 'A part that several features share knows none of them, nor what is saved.',
  app: 'The app keeps the job, the store and the device for every feature; it knows none of them.',
  features:
    'A feature knows the app, the shared parts and the job; what two features need moves to job, app or ui.',
  component:
    'A component that reaches storage or a worker can show what is not saved; let a state class of the feature join them.',
  routes: 'A route is its load and one component; the feature does the rest.'
};

const NUMERIC_LIBRARIES = [/^@stdlib\/stats-base-dists-/, /^simple-statistics$/];

/** Files outside src that the app may read: data, and its own version. */
const OUTSIDE = [/\/package\.json$/, /\/seeds\/[^/]+\.json$/];

/** @param {string} path */
function roomOf(path) {
  const inside = path.replaceAll('\\', '/');
  if (/\/src\/routes\//.test(inside)) return 'routes';
  if (/\/src\/hub\//.test(inside)) return 'hub';
  return /\/src\/lib\/(features\/[^/]+|[^/]+)\//.exec(inside)?.[1];
}

/** @param {string} source after `$lib/` */
function targetOf(source) {
  const [first, second, ...rest] = source.split('/');
  if (first !== 'features') return { target: first, rest: [second ?? '', ...rest] };
  return { target: `${first}/${second}`, rest };
}

/** @type {import('eslint').Rule.RuleModule} */
export const layers = {
  meta: {
    type: 'problem',
    schema: [],
    messages: { wrong: '{{room}} may not import {{target}}. {{reason}}' }
  },
  create(context) {
    const file = context.filename.replaceAll('\\', '/');
    const room = roomOf(file);
    if (!room || /\.test\.ts$/.test(file)) return {};
    const allowed = ROOMS[room];
    const isComponent = file.endsWith('.svelte');

    /** @param {import('estree').Node} node @param {unknown} source */
    const check = (node, source) => {
      if (typeof source !== 'string') return;
      const wrong = (/** @type {string} */ target, reason = REASONS[room.split('/')[0]]) =>
        context.report({ node, messageId: 'wrong', data: { room, target, reason } });
      if (!allowed) {
        wrong(source, 'Nobody has said what this room is for: name it in lint/layers.js.');
        return;
      }
      if (source.startsWith('.')) {
        const path = new URL(source, `file://${file}`).pathname;
        const target = roomOf(path);
        // What hub and clients agree on is the one door of the hub.
        if (allowed.includes('hub') && path.endsWith('/src/hub/protocol.ts')) return;
        if (target && target !== room) wrong(`${source} by a relative path; use $lib/${target}`);
        else if (!path.includes('/src/') && !OUTSIDE.some((data) => data.test(path))) wrong(source);
        return;
      }
      if (source.startsWith('$lib/')) {
        const { target, rest } = targetOf(source.slice(5));
        if (target === room) return;
        const isAllowed =
          allowed.includes(target) ||
          (target.startsWith('features/') && allowed.includes('features/*'));
        if (!isAllowed) wrong(source);
        else if (isComponent && ['storage', 'worker'].includes(target))
          wrong(source, REASONS.component);
        else if (rest.some((part) => /\.(ts|js|svelte)$/.test(part)))
          wrong(`${source}: a folder's index.ts is its only door`);
        return;
      }
      if (room === 'engine' && !NUMERIC_LIBRARIES.some((library) => library.test(source)))
        wrong(source);
    };
    return {
      ImportDeclaration: (node) => check(node, node.source.value),
      ExportNamedDeclaration: (node) => node.source && check(node, node.source.value),
      ExportAllDeclaration: (node) => check(node, node.source.value),
      ImportExpression: (node) =>
        check(node, node.source.type === 'Literal' ? node.source.value : undefined)
    };
  }
};
