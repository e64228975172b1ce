/**
 * The layers of the program and what each may import. Imports point one way:
 * routes → state, ui → journal, engine; storage → journal → engine.
 */
const LAYERS = {
  engine: [],
  journal: ['engine'],
  gauge: ['engine'],
  text: [],
  storage: ['journal', 'engine'],
  worker: ['engine'],
  ui: ['text', 'journal', 'engine', 'gauge'],
  state: ['storage', 'worker', 'gauge', 'journal', 'engine', 'text'],
  routes: ['state', 'ui', 'text', 'journal', 'engine', 'gauge']
};

const REASONS = {
  engine:
    'The engine is pure numbers: it must run in a worker, in tests and in any future app without a browser, so it imports only itself and the agreed numeric libraries.',
  journal:
    'The journal is pure: it must fold the same bytes on every device, so it knows only the engine.',
  gauge:
    'A gauge adapter turns keystrokes and lines into readings and knows nothing of storage or screens.',
  text: 'The catalogue of words knows nothing but words, so that a translator can read it.',
  storage: 'Storage keeps events; if it knew screens, a screen could lose a reading.',
  worker: 'The worker runs the engine; anything else would pull the page into it.',
  ui: 'A component that reaches storage can show what is not saved; let a class in state/ join them.',
  state:
    'State joins storage, engine and view; a component or page imported here would make a circle.',
  routes:
    'Pages are thin: they read state and call commands, so they never reach storage or a worker.'
};

const NUMERIC_LIBRARIES = [/^@stdlib\/stats-base-dists-/, /^simple-statistics$/];

/** @param {string} path */
function layerOf(path) {
  const inside = path.replaceAll('\\', '/');
  if (/\/src\/routes\//.test(inside)) return 'routes';
  return /\/src\/lib\/([^/]+)\//.exec(inside)?.[1];
}

/** @type {import('eslint').Rule.RuleModule} */
export const layers = {
  meta: {
    type: 'problem',
    schema: [],
    messages: { wrong: '{{layer}} may not import {{target}}. {{reason}}' }
  },
  create(context) {
    const file = context.filename.replaceAll('\\', '/');
    const layer = layerOf(file);
    if (!layer || !(layer in LAYERS) || /\.test\.ts$/.test(file)) return {};
    const own = /** @type {keyof typeof LAYERS} */ (layer);

    /** @param {import('estree').Node} node @param {unknown} source */
    const check = (node, source) => {
      if (typeof source !== 'string') return;
      const wrong = (/** @type {string} */ target) =>
        context.report({ node, messageId: 'wrong', data: { layer, target, reason: REASONS[own] } });
      if (source.startsWith('.')) {
        const target = layerOf(new URL(source, `file://${file}`).pathname);
        if (target && target !== layer) wrong(`${source} by a relative path; use $lib/${target}`);
        return;
      }
      if (source.startsWith('$lib/')) {
        const [target, ...rest] = source.slice(5).split('/');
        if (target === layer) return;
        if (!LAYERS[own].includes(target)) wrong(source);
        else if (target !== 'ui' && rest.some((part) => /\.(ts|js|svelte)$/.test(part)))
          wrong(`${source}: a folder's index.ts is its only door`);
        return;
      }
      if (layer === 'engine' && !NUMERIC_LIBRARIES.some((library) => library.test(source)))
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
