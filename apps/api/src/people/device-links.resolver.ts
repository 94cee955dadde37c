import { Args, Context, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { renderSVG } from 'uqr';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { grantOf } from '../platform/identity/identity.types.js';
import { Credential, Needs, Viewer } from '../platform/identity/rights.js';
import { Meet } from '../platform/objects/meet.type.js';
import {
  DeviceLinkCreateInput,
  DeviceLinkExchangeInput,
  DeviceLinkRevokeInput,
} from './device-links.inputs.js';
import { DeviceLinksService } from './device-links.service.js';
import {
  DeviceLink,
  DeviceLinkCreatePayload,
  DeviceLinkExchangePayload,
  deviceLinkObject,
  DeviceLinkRevokePayload,
} from './device-links.types.js';

@Resolver(() => DeviceLink)
export class DeviceLinksResolver {
  constructor(private readonly service: DeviceLinksService) {}

  @Mutation(() => DeviceLinkCreatePayload, {
    description: 'Codes: NOT_FOUND, WINDOW_EMPTY, BEYOND_OWN, ID_REUSED.',
  })
  @Needs('admin', 'director', 'referee')
  async deviceLinkCreate(
    @Args('input') input: DeviceLinkCreateInput,
    @Viewer() viewer: Identity,
    @Context() { origin }: RequestContext,
  ): Promise<DeviceLinkCreatePayload> {
    const made = await this.service.create(input, viewer);
    if ('refusal' in made) return { link: null, isReplay: false, userErrors: [made.refusal] };
    const link = deviceLinkObject(made.row, this.service.urlOf(made.row, origin));
    return { link, isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => DeviceLinkRevokePayload, {
    description: 'Ends a link and every device that came in by it, at once. Codes: NOT_FOUND, ALREADY_SO.',
  })
  @Needs('admin', 'director', 'referee')
  async deviceLinkRevoke(
    @Args('input') input: DeviceLinkRevokeInput,
    @Viewer() viewer: Identity,
    @Context() { origin }: RequestContext,
  ): Promise<DeviceLinkRevokePayload> {
    const done = await this.service.revoke(input, viewer);
    if ('refusal' in done) return { link: null, userErrors: [done.refusal] };
    return { link: deviceLinkObject(done.row, this.service.urlOf(done.row, origin)), userErrors: [] };
  }

  @Mutation(() => DeviceLinkExchangePayload, {
    description:
      'Gives a device its token for what stands behind the # of a link. Codes: NO_SUCH_LINK, NOT_YET, ALL_DEVICES_IN.',
  })
  @Credential()
  async deviceLinkExchange(
    @Args('input') input: DeviceLinkExchangeInput,
    @Context() { address }: RequestContext,
  ): Promise<DeviceLinkExchangePayload> {
    const admitted = await this.service.exchange(input, address);
    if ('refusal' in admitted)
      return { token: null, grant: null, label: null, userErrors: [admitted.refusal] };
    const { token, grant, label } = admitted;
    return { token, grant: grantOf(grant), label, userErrors: [] };
  }

  @ResolveField(() => String, { description: 'The address as a QR code: an SVG picture.' })
  qrSvg(@Parent() { url }: DeviceLink): string {
    return renderSVG(url, { ecc: 'M', border: 4 });
  }
}

@Resolver(() => Meet)
export class MeetDeviceLinksResolver {
  constructor(private readonly service: DeviceLinksService) {}

  @ResolveField(() => [DeviceLink], {
    description: 'The newest first, also those that have ended. For its director and referee.',
  })
  async deviceLinks(
    @Parent() meet: Meet,
    @Viewer() viewer: Identity,
    @Context() { origin }: RequestContext,
  ): Promise<DeviceLink[]> {
    const rows = await this.service.ofMeet(meet.row, viewer);
    return rows.map((row) => deviceLinkObject(row, this.service.urlOf(row, origin)));
  }
}
