import { DeviceLink } from '../entities/device-link.entity.js';
import { DeviceLinkRevocation } from '../entities/device-link-revocation.entity.js';
import type { DeviceLinkRow, DeviceLinkState } from '../access-rows.js';
import { columns } from '../statement.js';
import { managerOf, type Reads, type Tx } from '../transaction.js';

export type NewDeviceLink = Omit<DeviceLinkRow, 'madeAt'>;

export async function insert(tx: Tx, row: NewDeviceLink): Promise<void> {
  await managerOf(tx).insert(DeviceLink, row);
}

const SELECT = `
  SELECT ${columns('id', 'meetId', 'competitionId', 'callingGroupId', 'label', 'startsAt', 'endsAt', 'devices', 'isWindsOnly', 'madeBy', 'madeAt')},
         device_link.organisation_id AS "organisationId",
         (SELECT count(*)::integer FROM device_link_use AS use
           WHERE use.organisation_id = device_link.organisation_id AND use.link_id = device_link.id) AS used,
         revoked_at AS "revokedAt", revoked_by AS "revokedBy", reason AS "revokedBecause"
    FROM device_link LEFT JOIN device_link_revocation AS gone
      ON gone.organisation_id = device_link.organisation_id AND gone.link_id = id`;

export async function find(at: Reads, organisationId: string, id: string): Promise<DeviceLinkState | null> {
  const rows = await managerOf(at).query<DeviceLinkState[]>(
    `${SELECT} WHERE device_link.organisation_id = $1 AND id = $2`,
    [organisationId, id],
  );
  return rows[0] ?? null;
}

/** The newest first. */
export async function ofMeet(at: Reads, organisationId: string, meetId: string): Promise<DeviceLinkState[]> {
  return managerOf(at).query<DeviceLinkState[]>(
    `${SELECT} WHERE device_link.organisation_id = $1 AND meet_id = $2 ORDER BY made_at DESC, id DESC`,
    [organisationId, meetId],
  );
}

/** True: this device came in by the link before. */
export async function isUsedBy(
  at: Reads,
  organisationId: string,
  linkId: string,
  deviceId: string,
): Promise<boolean> {
  const rows = await managerOf(at).query<unknown[]>(
    `SELECT 1 FROM device_link_use WHERE organisation_id = $1 AND link_id = $2 AND device_id = $3`,
    [organisationId, linkId, deviceId],
  );
  return rows.length > 0;
}

/**
 * Gives a device the link's next number. False: all are taken. Throws a `unique` violation when another device took the
 * same number at the same moment.
 */
export async function use(
  tx: Tx,
  { organisationId, id, devices }: DeviceLinkRow,
  deviceId: string,
): Promise<boolean> {
  const rows = await managerOf(tx).query<unknown[]>(
    `INSERT INTO device_link_use (organisation_id, link_id, number, device_id)
     SELECT $1, $2, count(*) + 1, $3 FROM device_link_use WHERE organisation_id = $1 AND link_id = $2
     HAVING count(*) < $4 RETURNING number`,
    [organisationId, id, deviceId, devices],
  );
  return rows.length > 0;
}

export interface NewDeviceLinkRevocation {
  readonly organisationId: string;
  readonly linkId: string;
  readonly reason: string;
  readonly revokedBy: string;
}

/** Throws a `unique` violation of `device_link_revocation_pkey` when it was revoked before. */
export async function revoke(tx: Tx, row: NewDeviceLinkRevocation): Promise<void> {
  await managerOf(tx).insert(DeviceLinkRevocation, row);
}
