import { ApiClient, type Failure } from './api-client.js';

/** What a device is given to come in by: the token of a post, or the secret of a link that is exchanged for one. */
export interface Pass {
  readonly kind: 'token' | 'link';
  readonly text: string;
}

const EXCHANGE = `mutation ExchangeLink($input: DeviceLinkExchangeInput!) {
  deviceLinkExchange(input: $input) { token userErrors { code message } }
}`;

interface Exchanged {
  readonly token: string | null;
  readonly userErrors: readonly { readonly code: string; readonly message: string }[];
}

/** The token that a link is exchanged for. The same device gets the same one again. */
export async function exchanged(link: string, deviceId: string): Promise<string | Failure> {
  const client = new ApiClient(() => null);
  const answer = await client.send<{ deviceLinkExchange: Exchanged }>(EXCHANGE, {
    input: { link, deviceId },
  });
  if (!answer.ok) return answer.failure;
  const { token, userErrors } = answer.data.deviceLinkExchange;
  return token ?? { kind: 'no-right', message: userErrors[0]?.message ?? '' };
}

/** Reads an address or a text that was pasted; a text that is neither is taken for a token. */
export function passIn(text: string): Pass {
  const [, kind, value] = /[#&](token|link)=([\w.~+/-]+)/.exec(text) ?? [];
  return value === undefined
    ? { kind: 'token', text: text.trim() }
    : { kind: kind as Pass['kind'], text: value };
}

/** What the address brings along, once: it is taken out of the address, so that it is in no history. */
export function passInAddress(): Pass | null {
  if (!/[#&](token|link)=/.test(location.hash)) return null;
  const pass = passIn(location.hash);
  history.replaceState(null, '', location.pathname);
  return pass;
}
