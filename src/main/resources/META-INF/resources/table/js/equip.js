/** Gets what this tablet needs to keep and deliver an adult's looks: a key to seal with, a pass to deliver by. */
import * as outbox from './outbox.js';
import * as vault from './vault.js';
import { adultOf, askPass } from './server.js';
import { uuidv7 } from './uuid.js';

/** Few words by which an adult knows the tablet again; nothing that tells one tablet of a kind from another. */
function label() {
  const agent = navigator.userAgent;
  const find = (names) => names.find(([mark]) => agent.includes(mark))?.[1];
  return [find([['Edg/', 'Edge'], ['Firefox/', 'Firefox'], ['Chrome/', 'Chrome'], ['Safari/', 'Safari']]),
    find([['iPad', 'iPad'], ['iPhone', 'iPhone'], ['Android', 'Android'], ['CrOS', 'Chromebook'], ['Mac', 'Mac'],
      ['Windows', 'Windows'], ['Linux', 'Linux']])].filter(Boolean).join(' · ');
}

/**
 * Asks the server when something is missing or half of its days are over, then seals what lies in the clear. Without an
 * answer everything goes on as it was.
 */
export async function equip(table) {
  const owner = adultOf(table);
  const { signIn } = table.adult;
  const sealed = await outbox.keysInUse(owner, `initials:${owner}:${table.class.id}`);
  if (await vault.wants(owner, table.class.id, sealed)) {
    const device = await outbox.device(uuidv7());
    await vault.receive(owner, table.class.id, await askPass(table.class.id, device, label(), sealed));
  }
  if (vault.ready()) {
    await outbox.adopt(signIn, owner, table.class.id, table.children);
  }
}
