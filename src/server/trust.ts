import { createHash } from 'node:crypto';
import 'reflect-metadata'; // the certificates' library asks for it at load
import * as x509 from '@peculiar/x509';

/** The shop's own authority: a phone that trusts it takes the bench's certificate for good. */
export interface Trust {
  /** the authority's certificate as a phone takes it in: DER (X.690) */
  readonly authority: Uint8Array;
  /** SHA-256 of it in pairs of hex signs, to be compared by eye */
  readonly fingerprint: string;
  /** A certificate for the bench under these names and addresses. */
  readonly leaf: (names: readonly string[], now: Date) => Promise<Leaf>;
}

export interface Leaf {
  /** PEM (RFC 7468) */
  readonly key: string;
  readonly cert: string;
  readonly until: Date;
}

const dayMs = 24 * 3600_000;
const authorityYears = 20;
/** Phones refuse a certificate that is good for more than 825 days, whoever made it (from memory). */
const leafDays = 200;
const algorithm = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' } as const;
const { subtle } = globalThis.crypto;

/** A new authority as one text, its key and its certificate: whoever has it can stand for the bench, so it is kept to oneself. */
export async function makeAuthority(now: Date): Promise<string> {
  const keys = await subtle.generateKey(algorithm, true, ['sign', 'verify']);
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    name: 'CN=Wristpin shop authority',
    keys,
    signingAlgorithm: algorithm,
    ...serial(),
    notBefore: new Date(now.getTime() - dayMs), // a phone whose clock is slow
    notAfter: new Date(now.getTime() + authorityYears * 365 * dayMs),
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      new x509.Extension('2.5.29.30', true, onlyInTheShop()),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  const key = x509.PemConverter.encode(await subtle.exportKey('pkcs8', keys.privateKey), 'PRIVATE KEY');
  return `${key}\n${certificate.toString('pem')}\n`;
}

/** @throws Error when the text holds no such authority */
export async function trustOf(kept: string): Promise<Trust> {
  const parts = kept.match(/-----BEGIN [^-]+-----[^-]+-----END [^-]+-----/g) ?? [];
  if (parts.length !== 2) throw new Error('it holds no key and certificate');
  const signingKey = await subtle.importKey(
    'pkcs8',
    x509.PemConverter.decodeFirst(parts[0]!),
    algorithm,
    false,
    ['sign'],
  );
  const authority = new x509.X509Certificate(parts[1]!);
  const der = new Uint8Array(authority.rawData);
  return {
    authority: der,
    fingerprint: createHash('sha256')
      .update(der)
      .digest('hex')
      .toUpperCase()
      .replace(/(..)(?!$)/g, '$1:'),
    leaf: (names, now) => makeLeaf(authority, signingKey, names, now),
  };
}

async function makeLeaf(
  authority: x509.X509Certificate,
  signingKey: CryptoKey,
  names: readonly string[],
  now: Date,
): Promise<Leaf> {
  const keys = await subtle.generateKey(algorithm, true, ['sign', 'verify']);
  const until = new Date(Math.min(now.getTime() + leafDays * dayMs, authority.notAfter.getTime()));
  const certificate = await x509.X509CertificateGenerator.create({
    subject: 'CN=Wristpin',
    issuer: authority.subject,
    publicKey: keys.publicKey,
    signingKey,
    signingAlgorithm: algorithm,
    ...serial(),
    notBefore: new Date(now.getTime() - dayMs),
    notAfter: until,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension(names.map(asSubject)),
      await x509.AuthorityKeyIdentifierExtension.create(authority),
    ],
  });
  const key = x509.PemConverter.encode(await subtle.exportKey('pkcs8', keys.privateKey), 'PRIVATE KEY');
  return { key, cert: certificate.toString('pem'), until };
}

const asSubject = (name: string): { type: 'ip' | 'dns'; value: string } => ({
  type: /^[\d.]+$|:/.test(name) ? 'ip' : 'dns',
  value: name,
});

/** RFC 5280, section 4.1.2.2: positive, at most 20 octets. */
function serial(): { serialNumber: string } {
  const bytes = globalThis.crypto.getRandomValues(new Uint8Array(16));
  bytes[0] = (bytes[0]! & 0x7f) | 0x40;
  return { serialNumber: Buffer.from(bytes).toString('hex') };
}

/** Networks that nobody has to himself: RFC 1918, RFC 3927, RFC 6598, loopback; RFC 4193, RFC 4291. */
const privateNetworks = [
  ...['0a000000ff000000', 'ac100000fff00000', 'c0a80000ffff0000', 'a9fe0000ffff0000'],
  ...['64400000ffc00000', '7f000000ff000000'],
  ...[`fc${'00'.repeat(15)}fe${'00'.repeat(15)}`, `fe80${'00'.repeat(14)}ffc0${'00'.repeat(14)}`],
  `${'00'.repeat(15)}01${'ff'.repeat(16)}`,
];

/**
 * Name constraints (RFC 5280, section 4.2.1.10): the authority vouches for ".local" names and private addresses alone.
 * Whoever steals its key can stand for no other site to the phones that trust it.
 */
function onlyInTheShop(): Uint8Array<ArrayBuffer> {
  const subtrees = [
    der(0x30, der(0x82, Buffer.from('local'))),
    ...privateNetworks.map((network) => der(0x30, der(0x87, Buffer.from(network, 'hex')))),
  ];
  return new Uint8Array(der(0x30, der(0xa0, Buffer.concat(subtrees))));
}

/** One value in DER: tag, length, content (X.690, sections 8.1 and 10.1). */
function der(tag: number, content: Uint8Array): Buffer {
  const { length } = content;
  const size =
    length < 0x80 ? [length] : length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return Buffer.concat([Buffer.from([tag, ...size]), content]);
}
