import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import pg from 'pg';

/** A real PostgreSQL server of the test's own, on loopback, with fsync on, which is its default; nothing of an installed cluster is touched. */
export interface TestPostgres {
  /** the address of a new, empty database */
  newDatabase(extra?: string): Promise<string>;
  /** the same in a schema of one shared database: a hundred times cheaper than a database */
  newSchema(): Promise<string>;
  /** runs one statement in the server's own database */
  administer(statement: string): Promise<void>;
  /** as in a power cut: every server process dies at once, nothing is written out */
  crash(): Promise<void>;
  /** the way back after `crash` */
  start(): Promise<void>;
  stop(): Promise<void>;
}

/** The server, or the reason in plain words why there is none; the reason is printed as well. */
export async function startPostgres(): Promise<TestPostgres | { readonly reason: string }> {
  if (process.env.WRISTPIN_TEST_POSTGRES === 'off') return leftOut('WRISTPIN_TEST_POSTGRES=off asks for it');
  const programs = findPrograms() ?? (installed() ? findPrograms() : undefined);
  if (programs !== undefined) return cluster(programs, await freePort());
  return leftOut(
    'there are no PostgreSQL server programs (initdb, pg_ctl) here, and none could be installed',
  );
}

function leftOut(reason: string): { readonly reason: string } {
  console.warn(`The tests on PostgreSQL are left out: ${reason}.`);
  return { reason };
}

function findPrograms(debianRoot = '/usr/lib/postgresql', path = process.env.PATH ?? ''): string | undefined {
  const versions = existsSync(debianRoot)
    ? readdirSync(debianRoot).sort((a, b) => Number(b) - Number(a))
    : [];
  const folders = [...versions.map((version) => join(debianRoot, version, 'bin')), ...path.split(delimiter)];
  return folders.find((folder) => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'pg_ctl')));
}

const isRoot = process.getuid?.() === 0;

function installed(): boolean {
  if (!isRoot || !existsSync('/etc/debian_version')) return false;
  console.info('PostgreSQL is not here: trying to install it for the tests …');
  const apt = (...args: string[]) =>
    spawnSync('apt-get', ['-o', 'DPkg::Lock::Timeout=300', ...args], {
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      stdio: 'ignore',
    }).status === 0;
  return apt('update') && apt('install', '-y', '--no-install-recommends', 'postgresql');
}

async function cluster(programs: string, port: number): Promise<TestPostgres> {
  const folder = mkdtempSync(join(tmpdir(), 'wristpin-postgres-'));
  const data = join(folder, 'data');
  mkdirSync(data);
  // the server refuses to run as root, and its data must belong to the user it runs as
  if (isRoot) execFileSync('chown', ['-R', 'postgres', folder]);
  const log = join(folder, 'log');
  const pgCtl = (...args: string[]) =>
    asServer(join(programs, 'pg_ctl'), ['-D', data, '-l', log, '-w', ...args]);
  const options = `-p ${port} -k ${folder} -c listen_addresses=127.0.0.1`;
  const start = () => pgCtl('-o', options, 'start');
  const tidy = () => rmSync(folder, { recursive: true, force: true });
  const endAbruptly = () => {
    spawnSync(...serverCommand(join(programs, 'pg_ctl'), ['-D', data, '-m', 'immediate', 'stop']), {
      stdio: 'ignore',
    });
    tidy();
  };
  process.once('exit', endAbruptly);

  const initdb = ['-D', data, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-sync'];
  await asServer(join(programs, 'initdb'), initdb);
  await start().catch((cause) => {
    throw new Error(`PostgreSQL did not start: ${existsSync(log) ? readFileSync(log, 'utf8') : 'no log'}`, {
      cause,
    });
  });
  const address = (database: string) => `postgres://postgres@127.0.0.1:${port}/${database}`;
  const administer = (statement: string) => query(address('postgres'), statement);
  let made = 0;
  return {
    start,
    administer,
    async newDatabase(extra = '') {
      const name = `log${++made}`;
      await administer(`create database ${name} ${extra}`);
      return address(name);
    },
    async newSchema() {
      const name = `place${++made}`;
      await administer(`create schema ${name}`);
      return `${address('postgres')}?options=${encodeURIComponent(`-c search_path=${name}`)}`;
    },
    crash: () => pgCtl('-m', 'immediate', 'stop'),
    async stop() {
      await pgCtl('-m', 'immediate', 'stop'); // its data is thrown away
      process.off('exit', endAbruptly);
      tidy();
    },
  };
}

async function query(address: string, statement: string): Promise<void> {
  const client = new pg.Client(address);
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}

function serverCommand(program: string, args: readonly string[]): [string, string[]] {
  return isRoot ? ['runuser', ['-u', 'postgres', '--', program, ...args]] : [program, [...args]];
}

/** Without pipes: the server would inherit them, and the call would never end. */
function asServer(program: string, args: readonly string[]): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(...serverCommand(program, args), { stdio: 'ignore', cwd: '/' });
    child.on('error', reject);
    child.on('exit', (code) =>
      code === 0 ? resolve() : reject(new Error(`${program} ${args.join(' ')} ended with ${code}`)),
    );
  });
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });
}
