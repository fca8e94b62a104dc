import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import about from './package.json' with { type: 'json' };

const { policyFor } = (await import('./scripts/policy.mjs' as string)) as {
  policyFor: (where: 'header' | 'page') => string;
};
const { notices } = (await import('./scripts/notices.mjs' as string)) as { notices: () => string };

interface Graph {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}

const first = new Set<string>();

/** All that the first screen needs in one piece: it packs smaller than dozens of shared crumbs. */
function firstScreen(id: string, graph: Graph): string | null {
  if (first.size === 0) follow(new URL('web/main.tsx', import.meta.url).pathname, graph);
  return first.has(id) ? 'first' : null;
}

function follow(id: string, graph: Graph): void {
  if (first.has(id)) return;
  first.add(id);
  for (const next of graph.getModuleInfo(id)?.importedIds ?? []) follow(next, graph);
}

/** The papers of the example that opens first, likewise. */
const firstPapers = (id: string): string | null =>
  /examples\/(heavy-air|trains\/granite-air|vehicles\/(granite|air-car)|(lines|hosts)\/larkfield-hollow)\.json$/.test(
    id,
  )
    ? 'papers'
    : null;

/** Descriptions of fields: `must(schema, label, help, { assumed, asked })`, likewise `may` and `rule`. */
const FIELDS = /papers\/\w+\/([\w-]+-)?fields\.ts$/;
const WORDS = '?words';

interface Call {
  readonly callee: { readonly name?: string };
  readonly arguments: readonly { readonly start: number; readonly end: number; readonly type: string }[];
}

/**
 * What fields are called and how they are measured is read in the forms alone: the schemas that the first screen
 * reads papers with go without it, and `papers/fields.ts` and `papers/record/forms.ts`, which the forms are made from, get them whole.
 */
function wordsApart(): Plugin {
  return {
    name: 'words-apart',
    apply: 'build',
    enforce: 'pre',
    async resolveId(source, importer, options) {
      if (!importer || !(/papers\/(fields|record\/forms)\.ts$/.test(importer) || importer.endsWith(WORDS)))
        return null;
      const resolved = await this.resolve(source, importer, { ...options, skipSelf: true });
      return resolved &&
        (FIELDS.test(resolved.id) || /papers\/schema\/(index|outing-files)\.ts$/.test(resolved.id))
        ? { ...resolved, id: resolved.id + WORDS }
        : resolved;
    },
    transform(code, id) {
      if (!FIELDS.test(id)) return null;
      const cuts: { start: number; end: number }[] = [];
      const look = (node: unknown): void => {
        if (typeof node !== 'object' || node === null) return;
        if ('type' in node && node.type === 'CallExpression') cuts.push(...wordsOf(node as unknown as Call));
        for (const inner of Object.values(node)) look(inner);
      };
      look(this.parse(code, { lang: 'ts' }));
      const cut = cuts
        .sort((a, b) => b.start - a.start)
        .reduce((text, { start, end }) => `${text.slice(0, start)}0${text.slice(end)}`, code);
      return { code: cut, map: null };
    },
  };
}

const wordsOf = ({ callee, arguments: given }: Call): readonly Call['arguments'][number][] =>
  ['must', 'may', 'rule'].includes(callee.name ?? '')
    ? given.slice(1).filter(({ type }) => type === 'Literal' || type === 'ObjectExpression')
    : [];

/** Remarks beside the assumed values are for whoever reads the file of them. */
function remarksApart(): Plugin {
  return {
    name: 'remarks-apart',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      if (!/data\/defaults\.json$/.test(id)) return null;
      const { rows } = JSON.parse(code) as { rows: readonly Record<string, unknown>[] };
      return { code: JSON.stringify({ rows: rows.map(({ note: _, ...row }) => row) }), map: null };
    },
  };
}

/** The workbench: static files that work from any folder and, once loaded, without a network. */
export default defineConfig({
  root: 'web',
  define: { HEEDWAY_VERSION: JSON.stringify(about.version) },
  base: './',
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    reportCompressedSize: true,
    // The PDF maker and the solver are large, and loaded when asked for.
    chunkSizeWarningLimit: 1000,
    // Everything comes from this machine or its cache: nothing is gained by asking ahead.
    modulePreload: false,
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: firstScreen, debugName: 'first' },
            { name: firstPapers, debugName: 'papers' },
          ],
        },
      },
    },
  },
  worker: { format: 'es' },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [
    {
      name: 'policy in the page',
      transformIndexHtml: () => [
        {
          tag: 'meta',
          attrs: { 'http-equiv': 'Content-Security-Policy', content: policyFor('page') },
          injectTo: 'head-prepend',
        },
      ],
    },
    {
      name: 'notices beside the page',
      generateBundle() {
        this.emitFile({ type: 'asset', fileName: 'notices.txt', source: notices() });
      },
    },
    wordsApart(),
    remarksApart(),
    VitePWA({
      // A person takes a new version when it suits: web/state/version.ts.
      registerType: 'prompt',
      injectRegister: null,
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,woff2,png,webmanifest,wasm,ttf,txt}'],
        // The solver that seats riders and the maker of PDFs work without a network too.
        maximumFileSizeToCacheInBytes: 5 * 1024 * 1024,
        navigateFallback: 'index.html',
      },
      manifest: {
        name: 'Heedway',
        short_name: 'Heedway',
        description: 'May this train leave?',
        display: 'standalone',
        background_color: '#fbf8f0',
        theme_color: '#1b2733',
        start_url: './',
        icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
      },
    }),
  ],
});
