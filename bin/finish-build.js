// Puts the ticket's JSON Schema beside the built code and marks the build as done.
import { writeFileSync } from 'node:fs';

const { TICKET_SCHEMA } = await import('../dist/ticket/ticket-schema.js');
writeFileSync(new URL('../dist/ticket/ticket.schema.json', import.meta.url), `${JSON.stringify(TICKET_SCHEMA, null, 2)}\n`);
writeFileSync(new URL('../dist/built', import.meta.url), '');
