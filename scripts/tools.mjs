// Running things from a fresh clone: plain JavaScript, no dependencies.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));
const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';

/** Run a command in the project; returns { status, output }. Output is shown as it comes unless quiet. */
export function run(command, args, { quiet = false, env = {} } = {}) {
  const result = spawnSync(command, args, {
    cwd: root,
    encoding: 'utf8',
    stdio: quiet ? 'pipe' : ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
    maxBuffer: 256 * 1024 * 1024,
  });
  const output = result.stdout ?? '';
  if (!quiet) process.stdout.write(output);
  return { status: result.status ?? 1, output };
}

/** Run a command beside what comes next; resolves with its status. */
export const runBeside = (command, args) =>
  new Promise((done) => {
    spawn(command, args, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] })
      .once('error', () => done(1))
      .once('exit', (status) => done(status ?? 1));
  });

/** Run a command and say nothing of it; resolves with { status, output }, what it said on either stream. */
export const runQuietly = (command, args) =>
  new Promise((done) => {
    const child = spawn(command, args, {
      cwd: root,
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32',
    });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8');
      stream.on('data', (text) => {
        output += text;
      });
    }
    child.once('error', (error) => done({ status: 1, output: `${error}` }));
    child.once('close', (status) => done({ status: status ?? 1, output }));
  });

export const bin = (name) =>
  join(root, 'node_modules', '.bin', process.platform === 'win32' ? `${name}.cmd` : name);

/** Whether a version of Node meets a range such as `^20.19.0 || >=22.12.0`: all that package.json uses. */
export function nodeMeets(version, range) {
  const [major, minor] = version.split('.').map(Number);
  return range.split('||').some((part) => {
    const [, sign, wantMajor, wantMinor] = /(\^|>=)(\d+)\.(\d+)/.exec(part);
    const later = major > wantMajor && sign === '>=';
    return later || (major === Number(wantMajor) && minor >= Number(wantMinor));
  });
}

/** Ends with a clear word where this Node is too old to build. */
function checkNode() {
  const { engines } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  if (nodeMeets(process.versions.node, engines.node)) return;
  console.error(
    `Found Node.js ${process.versions.node}; expected ${engines.node}. Install a newer one, then start again.`,
  );
  process.exit(1);
}

/** npm ci where the installed packages are missing or older than the lock file. */
export function installPackages() {
  checkNode();
  const mark = join(root, 'node_modules', '.package-lock.json');
  const lock = join(root, 'package-lock.json');
  if (existsSync(mark) && statSync(mark).mtimeMs >= statSync(lock).mtimeMs - 1000 && sameLock(mark, lock))
    return;
  console.log('Installing packages …');
  const { status } = run(npm, ['ci', '--ignore-scripts', '--no-audit', '--no-fund']);
  if (status !== 0) {
    console.error('npm ci failed: the packages could not be installed. Is the npm registry reachable?');
    process.exit(1);
  }
}

function sameLock(mark, lock) {
  try {
    const names = (path) =>
      Object.keys(JSON.parse(readFileSync(path, 'utf8')).packages).filter((n) => n !== '');
    const installed = new Set(names(mark));
    const optional = JSON.parse(readFileSync(lock, 'utf8')).packages;
    return names(lock).every((n) => installed.has(n) || optional[n].optional);
  } catch {
    return false;
  }
}

/** Path of a Chromium, installing Debian's where that is possible; undefined where there is none. */
export function findBrowser() {
  const candidates = [
    process.env.CHROMIUM,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
  ];
  const found = () => candidates.find((path) => path && existsSync(path));
  if (found() || !existsSync('/usr/bin/apt-get') || process.getuid?.() !== 0) return found();
  console.log('Installing a browser for the browser tests …');
  run('apt-get', ['update', '-q'], { quiet: true });
  run('apt-get', ['install', '-y', '-q', 'chromium'], {
    quiet: true,
    env: { DEBIAN_FRONTEND: 'noninteractive' },
  });
  return found();
}
