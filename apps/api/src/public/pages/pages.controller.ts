import { Controller, Get, Param, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { uuidOf, type ObjectKind } from '../../platform/inputs/global-id.js';
import { keptFor, sendable, sendPublic } from '../sending.js';
import { pageHtml, type Page } from './page.js';
import { PagesService, type Found } from './pages.service.js';
import { visitOf, type Visit } from './visit.js';

/** Whose page it is, which one, and how it looks. */
type Route = readonly [ObjectKind, 'meet' | 'clubTable' | 'competition' | 'club' | 'athlete', Page['kind']];

const ROUTES: Readonly<Record<string, Route>> = {
  '/meets/:id': ['Meet', 'meet', 'plain'],
  '/meets/:id/clubs': ['Meet', 'clubTable', 'plain'],
  '/meets/:id/screen': ['Meet', 'meet', 'screen'],
  '/competitions/:id': ['Competition', 'competition', 'plain'],
  '/competitions/:id/screen': ['Competition', 'competition', 'screen'],
  '/competitions/:id/announcer': ['Competition', 'competition', 'announcer'],
  '/clubs/:id': ['Club', 'club', 'plain'],
  '/athletes/:id': ['Athlete', 'athlete', 'plain'],
  '/embed/meets/:id': ['Meet', 'meet', 'framed'],
  '/embed/club-tables/:id': ['Meet', 'clubTable', 'framed'],
  '/embed/competitions/:id': ['Competition', 'competition', 'framed'],
  '/embed/clubs/:id': ['Club', 'club', 'framed'],
};

const HTML = 'text/html; charset=utf-8';
const MINUTE_MS = 60_000;

/** Nothing foreign, nothing written into the page runs; a frame only where the page is made for one. */
function policy(isFramed: boolean): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self'",
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    `frame-ancestors ${isFramed ? '*' : "'none'"}`,
  ].join('; ');
}

/** Pages for people, written by the server: everything on them is there without a script. */
@Controller()
export class PagesController {
  constructor(private readonly pages: PagesService) {}

  @Get()
  async index(@Req() request: FastifyRequest, @Res() reply: FastifyReply): Promise<void> {
    const visit = visitOf(request);
    this.send(request, reply, visit, await this.pages.index(visit));
  }

  @Get(Object.keys(ROUTES))
  async page(
    @Param('id') id: string,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const [object, what, kind] = ROUTES[request.routeOptions.url ?? '']!;
    const visit = visitOf(request);
    const uuid = uuidOf(object, id);
    // To the minute, so that the page stays the same as long as what it says does.
    const asOf = new Date(Math.floor(Date.now() / MINUTE_MS) * MINUTE_MS).toISOString();
    const found = uuid === null ? null : await this.pages[what](uuid, visit, asOf, kind);
    this.send(request, reply, visit, found);
  }

  private send(request: FastifyRequest, reply: FastifyReply, visit: Visit, found: Found | null): void {
    const page = found?.page ?? this.pages.nothing(visit);
    const isFramed = page.kind === 'framed';
    void reply.headers({
      'content-security-policy': policy(isFramed),
      'cross-origin-resource-policy': isFramed ? 'cross-origin' : 'same-origin',
      'referrer-policy': 'no-referrer',
      vary: 'accept-language',
    });
    const html = pageHtml(page, visit);
    if (found) sendPublic(request, reply, sendable(HTML, html), keptFor(found.states));
    else void reply.code(404).type(HTML).header('cache-control', 'no-store').send(html);
  }
}
