/**
 * The PIN of one adult on this tablet, four to eight digits. Kept of it are a salt and twelve bits of its PBKDF2 value,
 * sealed like everything else of the adult: gone with the key at sign-out, and too few to tell which of the many PINs
 * that fit was chosen. A wrong PIN passes once in 4,096 tries, and five are allowed.
 */
import { dialog, h, button } from './dom.js';
import * as outbox from './outbox.js';
import * as vault from './vault.js';
import { t } from './texts.js';

/** Only slows a search down that the key would have to be stolen for first. */
const ROUNDS = 200000;
const name = (owner) => `pin:${owner}`;

async function bitsOf(pin, salt) {
  const key = await crypto.subtle.importKey('raw', new TextEncoder().encode(pin), 'PBKDF2', false, ['deriveBits']);
  const bits = new Uint8Array(await crypto.subtle.deriveBits(
    { name: 'PBKDF2', hash: 'SHA-256', iterations: ROUNDS, salt: Uint8Array.from(salt) }, key, 16));
  return ((bits[0] & 0x0f) << 8) | bits[1];
}

const kept = (owner) => (vault.ready() ? outbox.recallPage(name(owner)) : null);

export const hasPin = async (owner) => Boolean(await kept(owner));

export async function rightPin(owner, pin) {
  const { salt, bits } = await kept(owner);
  return await bitsOf(pin, salt) === bits;
}

async function setPin(owner, pin) {
  const salt = [...crypto.getRandomValues(new Uint8Array(16))];
  await outbox.rememberPage(name(owner), owner, { salt, bits: await bitsOf(pin, salt) });
}

/** Lets the adult choose a PIN for this tablet. */
export function choosePin(owner, done) {
  const field = (label, key) => h('label', { class: 'field' }, h('span', {}, t(label)),
    h('input', { type: 'password', inputmode: 'numeric', autocomplete: 'off', 'data-key': key, pattern: '[0-9]{4,8}',
      minlength: 4, maxlength: 8, required: true }));
  const said = h('p', { role: 'status' });
  const form = h('form', {}, h('h2', { id: 'pin-title' }, t('pinChoose')), h('p', {}, t('pinHint')),
    field('pinNew', 'pin-new'), field('pinAgain', 'pin-again'), said,
    h('div', { class: 'starts' }, h('button', { type: 'submit', class: 'primary', 'data-key': 'pin-set' }, t('pinSet')),
      button('close', () => box.close(), {}, t('close'))));
  form.addEventListener('submit', async (event) => {
    event.preventDefault();
    const [first, second] = [...form.querySelectorAll('input')].map((input) => input.value);
    if (first !== second) {
      said.textContent = t('pinDiffer');
      return;
    }
    await setPin(owner, first);
    box.close();
    done();
  });
  const box = dialog('pin', 'pin-title', form);
}
