// npm start: installs what is missing, builds, and opens the main job on the demo line.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { installPackages, root, run } from './tools.mjs';

installPackages();
if (run(process.execPath, [join(root, 'scripts', 'build.mjs')]).status !== 0) process.exit(1);

const demo = ['check', join('examples', 'steam-light.json')];
const shown = run(process.execPath, [join('dist', 'cli', 'heedway.mjs'), ...demo]);
if (![0, 10, 20, 30].includes(shown.status)) process.exit(shown.status);

const page = join(root, 'dist', 'web', 'index.html');
if (existsSync(page)) {
  const { serve } = await import('./serve.mjs');
  const port = Number(process.argv[process.argv.indexOf('--port') + 1]) || 4173;
  const { url } = await serve(join(root, 'dist', 'web'), port);
  console.log(`\nThe workbench is at ${url} (Ctrl+C ends it).`);
  if (!process.argv.includes('--no-open') && !process.env.CI) openPage(url);
} else {
  const strip = join('dist', 'strip.svg');
  run(process.execPath, [join('dist', 'cli', 'heedway.mjs'), 'speeds', demo[1], '--svg', strip], {
    quiet: true,
  });
  console.log(`\nThe strip of the demo outing: ${join(root, strip)}`);
  if (!process.argv.includes('--no-open') && !process.env.CI) openPage(join(root, strip));
}

/** Opens a page in the desktop's browser, where there is one. */
function openPage(target) {
  const opener = { darwin: 'open', win32: 'explorer' }[process.platform] ?? 'xdg-open';
  spawn(opener, [target], { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref();
}
