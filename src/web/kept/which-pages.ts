/** Under which path the answer to a request is kept on the device; nothing for what only the server can answer. */
export function pathKept(
  { method, mode, url }: Pick<Request, 'method' | 'mode' | 'url'>,
  origin: string,
): string | undefined {
  const { origin: asked, pathname } = new URL(url);
  if (method !== 'GET' || asked !== origin) return undefined;
  // what the shop holds, letting a device in and learning to trust it are the server's alone
  if (/^\/(api|pair|trust)\//.test(pathname)) return undefined;
  // every page is the one application, which reads the path itself
  const isPage = mode === 'navigate' && !/\.[a-z0-9]+$/i.test(pathname);
  return isPage ? '/' : pathname;
}

/** Of the versions on this device, oldest first, those that go: all but the one that takes over and the one before it. */
export function keptWith(name: string, all: readonly string[]): string[] {
  const ours = all.filter((each) => each.startsWith('wristpin ') && each !== name);
  return ours.slice(0, -1);
}
