/**
 * The least that has to be done for a crowd: `ws` sends the bytes that it is given to everybody who is connected, and
 * fastify sends the bytes that it keeps. No rules, no rights, nothing that is made.
 */
import fastify from 'fastify';
import { WebSocketServer } from 'ws';

const server = fastify({ logger: false, bodyLimit: 1024 * 1024 });
const crowd = new WebSocketServer({ server: server.server, perMessageDeflate: false });
server.addContentTypeParser('text/plain', { parseAs: 'string' }, (_request, body, done) => done(null, body));

server.post('/publish', (request, reply) => {
  const bytes = Buffer.from(request.body as string);
  for (const client of crowd.clients) client.send(bytes, { binary: false });
  return reply.send({ sent: crowd.clients.size });
});

const ETAG = '"kept"';
let kept = '';
server.put('/kept', (request, reply) => {
  kept = request.body as string;
  return reply.send({ kept: kept.length });
});
server.get('/kept', (request, reply) => {
  void reply.header('cache-control', 'public, max-age=2').header('etag', ETAG);
  if (request.headers['if-none-match'] === ETAG) return reply.code(304).send();
  return reply.type('application/json; charset=utf-8').send(kept);
});

process.stdout.write(`${await server.listen({ host: '127.0.0.1', port: 0 })}\n`);
