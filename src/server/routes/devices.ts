import { Hono } from 'hono';
import { getCookie } from 'hono/cookie';
import type { Store } from '../../store/index.js';
import { atTheBenchOnly, type DoorEnv, deviceCookie, type Network, originsOf } from '../door.js';
import { notFound } from '../error.js';
import type { Pairing } from '../pairing.js';

/** Which devices are let in; and, on the bench computer, letting in and shutting out. */
export function deviceRoutes(store: Store, pairing: Pairing, network: Network | undefined): Hono<DoorEnv> {
  const app = new Hono<DoorEnv>();
  app.get('/', async (c) => {
    const visitor = c.get('visitor');
    const here = visitor.place === 'this computer' ? null : visitor.device;
    const trust = network?.trust && { fingerprint: network.trust.fingerprint };
    return c.json({
      open: network !== undefined,
      here,
      devices: await store.devices(),
      ...(trust && { trust }),
    });
  });
  // who asks, and where else the bench is found should this address be gone
  app.post('/here', (c) => {
    const visitor = c.get('visitor');
    const token = getCookie(c, deviceCookie);
    if (visitor.place === 'this computer' || !network || !token) return c.json({ here: null, origins: [] });
    const origins = originsOf(network, c.env.incoming.socket.localPort!);
    return c.json({ here: visitor.device, origins, carry: pairing.carryOf(token) });
  });
  // asked by a page whose own address is gone: the way by which its device goes on under this one
  app.post('/over', (c) => {
    const visitor = c.get('visitor');
    if (visitor.place === 'this computer') throw notFound('This computer has no need of that.');
    return c.json({ path: `/pair/over/${pairing.stepOver(visitor.device.id)}` });
  });
  app.post('/code', atTheBenchOnly, (c) => {
    if (network === undefined) throw notFound('Wristpin is not open to the shop’s network.');
    const { code, until } = pairing.begin();
    const origins = originsOf(network, c.env.incoming.socket.localPort!).filter(
      (origin) => !origin.startsWith('https:'), // a phone that does not trust it yet would be shown a warning
    );
    return c.json({ code, until, links: origins.map((origin) => `${origin}/pair/${code}`) });
  });
  app.delete('/code', atTheBenchOnly, (c) => {
    pairing.withdraw();
    return c.json({});
  });
  app.delete('/:id', atTheBenchOnly, async (c) => {
    if (!(await pairing.shutOut(c.req.param('id')))) throw notFound('There is no such device.');
    return c.json({ devices: await store.devices() });
  });
  return app;
}
