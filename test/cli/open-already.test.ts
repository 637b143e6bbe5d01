import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Failed } from '../../src/cli/command.js';
import { openAlready } from '../../src/cli/open-already.js';
import { startServer, type TestServer } from '../server/support.js';

let server: TestServer;
let other: Server;
let ports: number[];
beforeAll(async () => {
  server = await startServer();
  other = createServer((_, answer) => answer.end('<p>something else</p>'));
  await new Promise<void>((listening) => other.listen(0, '127.0.0.1', listening));
  const closed = await startServer();
  await closed.close();
  ports = [closed.port, (other.address() as AddressInfo).port, server.port];
});
afterAll(async () => {
  other.close();
  await server.close();
});

test('the same store is found among ports that are free or another program’s', async () => {
  expect(await openAlready('here', '1.2.3', ports)).toBe(server.url);
});

test('another store is not this one, and nothing there is nothing', async () => {
  expect(await openAlready('elsewhere', '1.2.3', ports)).toBeUndefined();
  expect(await openAlready('here', '1.2.3', ports.slice(0, 2))).toBeUndefined();
});

test('an older version that still runs is to be closed first, not shown', async () => {
  await expect(openAlready('here', '1.2.4', ports)).rejects.toThrow(Failed);
  await expect(openAlready('here', '1.2.4', ports)).rejects.toThrow(
    /1\.2\.3 is still open at .* version 1\.2\.4/,
  );
});
