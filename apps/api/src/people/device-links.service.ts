import {
  deviceLinks,
  violationOf,
  type DeviceLinkRow,
  type DeviceLinkState,
  type MeetRow,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import { AccessMemory } from '../platform/identity/access-memory.js';
import { Doorkeeper } from '../platform/identity/doorkeeper.js';
import { findRoleObject, isRefused, windowGiven } from '../platform/identity/giving.js';
import type { Grant } from '../platform/identity/grant.js';
import type { Identity } from '../platform/identity/identity.js';
import { Throttle } from '../platform/identity/throttle.js';
import { Tokens } from '../platform/identity/tokens.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import type {
  DeviceLinkCreateInput,
  DeviceLinkExchangeInput,
  DeviceLinkRevokeInput,
} from './device-links.inputs.js';

type Refused = { readonly refusal: Refusal };
type Revoked = { readonly row: DeviceLinkState } | Refused;

export interface Admitted {
  readonly token: string;
  readonly grant: Grant;
  readonly label: string;
}

const PURPOSE = 'device link';
/** Two devices that come at the same moment want the same number; then one of them takes the next. */
const TRIES = 5;

/** Links with which a director or a referee hands a tablet to the officials of a circle. */
@Injectable()
export class DeviceLinksService {
  constructor(
    private readonly database: Database,
    private readonly access: AccessMemory,
    private readonly doorkeeper: Doorkeeper,
    private readonly throttle: Throttle,
    private readonly tokens: Tokens,
  ) {}

  /** Throws FORBIDDEN unless the viewer directs the meet or is its referee. */
  async create(input: DeviceLinkCreateInput, viewer: Identity): Promise<Created<DeviceLinkState>> {
    const { organisationId } = viewer;
    const object = await this.database.read((at) => findRoleObject(at, organisationId, 'official', input.on));
    if (!object?.ofMeet) return { refusal: notFound('competition or calling group', ['on']) };
    const wantedWindow = {
      from: Math.floor((input.from?.getTime() ?? Date.now()) / 1000),
      until: Math.floor(input.until.getTime() / 1000),
    };
    const window = windowGiven(viewer, ['director', 'referee'], object.ofMeet, wantedWindow);
    if (isRefused(window)) return window;
    const id = input.id ?? uuidV7();
    const known = await this.database.read((at) => deviceLinks.find(at, organisationId, id));
    const wanted = {
      ...{ organisationId, id, meetId: object.ofMeet, label: input.label, devices: input.devices },
      isWindsOnly: input.isWindsOnly,
      ...{ competitionId: object.competitionId, callingGroupId: object.callingGroupId },
      // "At once" was another moment when the request came for the first time.
      startsAt:
        input.from?.toISOString() ?? known?.startsAt ?? new Date(wantedWindow.from * 1000).toISOString(),
      endsAt: input.until.toISOString(),
      madeBy: viewer.holder!,
    };
    return createOnce<DeviceLinkState, typeof wanted>(this.database, {
      wanted,
      find: (tx, linkId) => deviceLinks.find(tx, organisationId, linkId),
      insert: async (tx) => {
        await deviceLinks.insert(tx, wanted);
        return null;
      },
    });
  }

  /** The link, and every device that came in by it, ends at once. */
  async revoke({ linkId, reason }: DeviceLinkRevokeInput, viewer: Identity): Promise<Revoked> {
    const { organisationId } = viewer;
    const done = await this.database
      .write<Revoked>(async (tx) => {
        const link = await deviceLinks.find(tx, organisationId, linkId);
        if (!link) return { refusal: notFound('link', ['linkId']) };
        requireKeeperOf(link.meetId, viewer);
        if (link.revokedAt !== null) return { refusal: ALREADY_SO };
        await deviceLinks.revoke(tx, { organisationId, linkId, reason, revokedBy: viewer.holder! });
        return { row: (await deviceLinks.find(tx, organisationId, linkId))! };
      })
      .catch((error: unknown): Revoked => {
        if (violationOf(error)?.constraint === 'device_link_revocation_pkey') return { refusal: ALREADY_SO };
        throw error;
      });
    if ('row' in done) this.access.revoke(linkId);
    return done;
  }

  /** A device's own token. Throws RATE_LIMITED after too many that were no links. */
  async exchange(input: DeviceLinkExchangeInput, address: string): Promise<Admitted | Refused> {
    return this.throttle.attempt([`address ${address}`], () => this.admit(input), isRefused);
  }

  private async admit({ link, deviceId, name }: DeviceLinkExchangeInput): Promise<Admitted | Refused> {
    const { organisationId } = this.doorkeeper.everybody;
    const id = this.idIn(link);
    const row = id && (await this.database.read((at) => deviceLinks.find(at, organisationId, id)));
    if (!row || row.revokedAt !== null) return { refusal: NO_LINK };
    const nowMs = this.tokens.nowS() * 1000;
    if (nowMs < Date.parse(row.startsAt)) return { refusal: tooEarly(row) };
    if (nowMs > Date.parse(row.endsAt)) return { refusal: NO_LINK };
    if (!(await this.count(row, deviceId))) return { refusal: ALL_TAKEN };
    const grant: Grant = {
      role: 'official',
      on: row.competitionId ?? row.callingGroupId,
      ...(row.callingGroupId !== null && { scope: 'calling-group' }),
      ...(row.isWindsOnly && { only: 'winds' }),
      from: Math.floor(Date.parse(row.startsAt) / 1000),
      until: Math.floor(Date.parse(row.endsAt) / 1000),
    };
    const label = name ? `${row.label}, ${name}` : row.label;
    const claims = {
      holder: this.holderOf(row, deviceId),
      organisationId,
      grants: [grant],
      label,
      linkId: row.id,
    };
    return { token: await this.tokens.issue(claims), grant, label };
  }

  /** True: the device is one of those that the link is for, now or before. */
  private async count(row: DeviceLinkRow, deviceId: string): Promise<boolean> {
    for (let left = TRIES; ; left -= 1) {
      try {
        return await this.database.write(
          async (tx) =>
            (await deviceLinks.isUsedBy(tx, row.organisationId, row.id, deviceId)) ||
            deviceLinks.use(tx, row, deviceId),
        );
      } catch (error) {
        if (violationOf(error)?.kind !== 'unique' || left === 1) throw error;
      }
    }
  }

  /** Who the device is in the journal: always the same, and never an id that somebody else has. */
  private holderOf({ id }: DeviceLinkRow, deviceId: string): string {
    const bytes = this.tokens.seal('device', `${id}/${deviceId}`).subarray(0, 16);
    // Version 8 (RFC 9562 section 5.8): made in a way of our own.
    bytes[6] = (bytes[6]! & 0x0f) | 0x80;
    bytes[8] = (bytes[8]! & 0x3f) | 0x80;
    return uuidOfHex(bytes.toString('hex'));
  }

  /** The newest first; throws FORBIDDEN unless the viewer directs the meet or is its referee. */
  async ofMeet(meet: MeetRow, viewer: Identity): Promise<DeviceLinkState[]> {
    requireKeeperOf(meet.id, viewer);
    return this.database.read((at) => deviceLinks.ofMeet(at, meet.organisationId, meet.id));
  }

  /** `origin`: how whoever asks reaches this server. */
  urlOf({ id }: DeviceLinkRow, origin: string): string {
    const bytes = Buffer.concat([Buffer.from(id.replaceAll('-', ''), 'hex'), this.tokens.seal(PURPOSE, id)]);
    return `${origin}/desk#link=${bytes.toString('base64url')}`;
  }

  /** The id of a link that was made here: its first 16 bytes, before the seal. */
  private idIn(link: string): string | null {
    const bytes = Buffer.from(link, 'base64url');
    const id = uuidOfHex(bytes.toString('hex', 0, 16));
    return this.tokens.isSealed(PURPOSE, id, bytes.subarray(16)) ? id : null;
  }
}

function uuidOfHex(hex: string): string {
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

function requireKeeperOf(meetId: string, viewer: Identity): void {
  if (!viewer.has('referee', meetId)) viewer.requireDirector(meetId);
}

function tooEarly({ startsAt }: DeviceLinkRow): Refusal {
  return refusal({
    code: 'NOT_YET',
    path: ['link'],
    message: `The link works from ${startsAt} on.`,
    remedy: 'Open it again then.',
  });
}

const NO_LINK = refusal({
  code: 'NO_SUCH_LINK',
  path: ['link'],
  message: 'This is no link that works here: it was not made here, has been revoked, or has run out.',
  remedy: 'Ask the referee or the director for another one.',
});

const ALL_TAKEN = refusal({
  code: 'ALL_DEVICES_IN',
  path: ['link'],
  message: 'As many devices as the link is for have come in by it.',
  remedy: 'Ask the referee or the director for a link of its own.',
});

const ALREADY_SO = refusal({
  code: 'ALREADY_SO',
  path: ['linkId'],
  message: 'The link was revoked before.',
  remedy: 'Nothing needs to be done.',
});
