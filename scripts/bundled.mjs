/** Libraries of a hundred files each, of which a few are used: reading them one by one is most of a start. */
export const bundled = ['zod', 'kysely', 'hono', '@hono/node-server', 'yaml', 'uuidv7'];
