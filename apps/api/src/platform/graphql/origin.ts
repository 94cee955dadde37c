import type { IncomingMessage } from 'node:http';
import { BlockList, isIP, isIPv6 } from 'node:net';

/**
 * Whether a page of this origin may open a socket here. A browser always says whose page it is, and a program that is
 * no browser needs no leave. RFC 6455, section 10.2.
 */
export function mayConnect({ headers }: IncomingMessage, others: readonly string[]): boolean {
  const { origin, host } = headers;
  if (origin === undefined) return true;
  if (others.includes(origin)) return true;
  return URL.canParse(origin) && new URL(origin).host === host;
}

/** Where a request came from: through proxies that are trusted, from whom they name; else from whoever is connected. */
export function addressReader(trusted: readonly string[]): (request: IncomingMessage) => string {
  const list = new BlockList();
  for (const range of trusted) {
    const [address = '', bits] = range.split('/', 2);
    const family = isIPv6(address) ? 'ipv6' : 'ipv4';
    list.addSubnet(address, bits === undefined ? (family === 'ipv6' ? 128 : 32) : Number(bits), family);
  }
  const isTrusted = (address: string): boolean =>
    isIP(address) !== 0 && list.check(address, isIPv6(address) ? 'ipv6' : 'ipv4');
  return ({ socket, headers }) => {
    let address = plain(socket.remoteAddress ?? '');
    const named = String(headers['x-forwarded-for'] ?? '').split(',');
    while (isTrusted(address) && named.length > 0) {
      const before = plain(named.pop()!.trim());
      if (isIP(before) === 0) break;
      address = before;
    }
    return address;
  };
}

/** An IPv4 address as an IPv6 socket shows it is that address. */
function plain(address: string): string {
  return address.replace(/^::ffff:(?=\d+\.)/i, '');
}
