import { Hono } from 'hono';
import { html, raw } from 'hono/html';
import { calledInNetwork, type DoorEnv, type Network } from './door.js';
import { notFound } from './error.js';
import { smallPage, withPolicy } from './headers.js';
import { page } from './small-page.js';
import { comparePicture, fetchPicture, openPicture, settingsPicture, whatItOpens } from './trust-pictures.js';

const file = 'wristpin-authority.crt';

/** How a phone comes to trust the bench, and the file by which it does. Open to every device: there is no secret in it. */
export function trustPage(network: Network | undefined): Hono<DoorEnv> {
  const app = new Hono<DoorEnv>();
  app.use(withPolicy(smallPage));
  app.get('/', (c) => {
    const { trust, links } = shown(network, c.env.incoming.socket.localPort!);
    return c.html(explained(trust.fingerprint, links));
  });
  app.get(`/${file}`, (c) => {
    const { trust } = shown(network, 0);
    const headers = {
      'Content-Type': 'application/x-x509-ca-cert',
      'Content-Disposition': `attachment; filename="${file}"`,
    };
    return c.body(new Uint8Array(trust.authority), 200, headers);
  });
  return app;
}

function shown(network: Network | undefined, port: number) {
  if (!network?.trust) throw notFound('Wristpin was not started with --secure, so it has no authority.');
  return {
    trust: network.trust,
    links: calledInNetwork(network).map((name) => `https://${name}:${port}/`),
  };
}

const explained = (fingerprint: string, [link, ...others]: readonly string[]) =>
  page(
    'Trust this bench',
    html`<p>Once this phone trusts the shop’s own authority, what is sent is encrypted, and Wristpin does more:</p>
      ${raw(whatItOpens)}
      <figure>
        ${raw(fetchPicture)}
        <figcaption><a class="button" href="/trust/${file}">1. Fetch the shop’s authority</a>It is a small file; keep it.</figcaption>
      </figure>
      <figure>
        ${raw(comparePicture)}
        <figcaption>
          2. Hold this against what the bench computer shows under Shop, Phones and tablets. It must be the same, sign for
          sign:<br /><code>${raw(fingerprint.replaceAll(':', ':<wbr />'))}</code>
        </figcaption>
      </figure>
      <figure>
        ${raw(settingsPicture)}
        <figcaption>
          3. Take it in. On phones that call it a profile: Settings, “Profile downloaded”, Install; then General, About,
          Certificate Trust Settings, and switch it on.<br />On others: Settings, Security, “Encryption and credentials”,
          “Install a certificate”, “CA certificate”, and choose the file.
        </figcaption>
      </figure>
      <figure>
        ${raw(openPicture)}
        <figcaption>
          4. ${link ? html`Open <a href="${link}">${link}</a>` : 'Open the bench’s address with https in front of it'} and put
          it on the home screen.${others.map((other) => html`<br />If that does not open: <a href="${other}">${other}</a>`)}
        </figcaption>
      </figure>
      <p>
        The authority can vouch for addresses inside a shop alone, never for another site. Its key stays on the bench
        computer. To stop trusting it, take it out again in the same place.
      </p>`,
  );
