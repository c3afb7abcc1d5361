// Ends a build: sweeps away what an older build left, writes the JSON Schemas of ticket and profile, marks the build as done.
import { existsSync, readdirSync, rmSync, writeFileSync } from 'node:fs';

const dist = new URL('../dist/', import.meta.url);
const src = new URL('../src/', import.meta.url);

for (const name of readdirSync(dist, { recursive: true, encoding: 'utf8' })) {
  const built = /^(.*)\.d\.ts$/.exec(name.replaceAll('\\', '/'));
  if (built !== null && !existsSync(new URL(`${built[1]}.ts`, src))) rmSync(new URL(name, dist));
}

const { PROFILE_SCHEMA, TICKET_SCHEMA } = await import('../dist/ticket/ticket-schema.js');
writeFileSync(new URL('ticket/ticket.schema.json', dist), `${JSON.stringify(TICKET_SCHEMA, null, 2)}\n`);
writeFileSync(new URL('ticket/profile.schema.json', dist), `${JSON.stringify(PROFILE_SCHEMA, null, 2)}\n`);
writeFileSync(new URL('built', dist), '');
