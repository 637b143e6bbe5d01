import { Hono } from 'hono';
import { html, raw } from 'hono/html';
import { calledInNetwork, type DoorEnv, type Network } from './door.js';
import { notFound } from './error.js';
import { smallPage, withPolicy } from './headers.js';
import { page } from './small-page.js';

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
    html`<p>
        Once this phone trusts the shop’s own authority, Wristpin opens also where there is no network, the screen stays
        awake while you tighten, timers ring, and the microphone listens to the engine. What is sent is encrypted.
      </p>
      <figure>
        ${raw(fetchPicture)}
        <figcaption>1. <a href="/trust/${file}">Fetch the shop’s authority</a> and keep the file.</figcaption>
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
          3. Take it in. Some phones call it a profile: Settings, “Profile downloaded”, Install; then General, About,
          Certificate Trust Settings, and switch it on. Others: Settings, Security, “Encryption and credentials”, “Install a
          certificate”, “CA certificate”, and choose the file.
        </figcaption>
      </figure>
      <figure>
        ${raw(openPicture)}
        <figcaption>
          4. ${link ? html`Open <a href="${link}">${link}</a>` : 'Open the bench’s address with https in front of it'} and put
          it on the home screen.${others.length > 0 ? ` If that does not open: ${others.join(' or ')}` : ''}
        </figcaption>
      </figure>
      <p>
        The authority can vouch for addresses inside a shop alone, never for another site. Its key stays on the bench
        computer. To stop trusting it, take it out again in the same place.
      </p>`,
  );

const drawing = (inside: string) =>
  `<svg viewBox="0 0 320 140" aria-hidden="true" fill="none" stroke="currentColor" stroke-width="3" stroke-linejoin="round" stroke-linecap="round">${inside}</svg>`;
const phone = (x: number, inside = '') =>
  `<g transform="translate(${x} 10)"><rect width="66" height="120" rx="10"/><path d="M26 111h14"/>${inside}</g>`;
const bench =
  '<g transform="translate(20 25)"><rect width="110" height="70" rx="5"/><path d="M40 95h30M55 70v25"/></g>';
const seal = (x: number, y: number) =>
  `<g transform="translate(${x} ${y})"><path d="M0 0h30v38l-15-8-15 8z"/><path d="M8 12h14M8 19h9"/></g>`;
const fetchPicture = drawing(
  `${bench}${seal(60, 40)}<path d="M145 62h55m-12-10 12 10-12 10"/>${phone(220, seal(18, 36))}`,
);
const comparePicture = drawing(
  `${bench}<path d="M40 55h70M40 72h70"/><path d="M160 56h28M160 70h28"/>${phone(220, '<path d="M12 45h42M12 58h42"/>')}`,
);
const settingsPicture = drawing(
  `${phone(127, '<path d="M12 28h42M12 48h42"/><rect x="12" y="66" width="42" height="20" rx="10"/><circle cx="44" cy="76" r="7" fill="currentColor"/>')}`,
);
const openPicture = drawing(
  `${phone(70, '<rect x="18" y="44" width="30" height="24" rx="4"/><path d="M24 44v-7a9 9 0 0 1 18 0v7"/>')}<path d="M160 70h26m-9-8 9 8-9 8"/>${phone(210, '<path d="m20 60 10 11 18-24"/>')}`,
);
