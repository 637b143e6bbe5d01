import { Hono } from 'hono';
import type { Store } from '../../store/index.js';
import { atTheBenchOnly, type DoorEnv, type Network } from '../door.js';
import { notFound } from '../error.js';
import type { Pairing } from '../pairing.js';

/** Which devices are let in; and, on the bench computer, letting in and shutting out. */
export function deviceRoutes(store: Store, pairing: Pairing, network: Network | undefined): Hono<DoorEnv> {
  const app = new Hono<DoorEnv>();
  app.get('/', async (c) => {
    const visitor = c.get('visitor');
    const here = visitor.place === 'this computer' ? null : visitor.device;
    return c.json({ open: network !== undefined, here, devices: await store.devices() });
  });
  app.post('/code', atTheBenchOnly, (c) => {
    if (network === undefined) throw notFound('Wristpin is not open to the shop’s network.');
    const { code, until } = pairing.begin();
    const port = c.env.incoming.socket.localPort;
    const links = network.addresses().map((address) => `http://${address}:${port}/pair/${code}`);
    return c.json({ code, until, links });
  });
  app.delete('/:id', atTheBenchOnly, async (c) => {
    if (!(await pairing.shutOut(c.req.param('id')))) throw notFound('There is no such device.');
    return c.json({ devices: await store.devices() });
  });
  return app;
}
