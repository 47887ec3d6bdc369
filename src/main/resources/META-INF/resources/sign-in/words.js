/** What the pages before the screens share: two languages, the page's token, one place for messages. */
const stored = () => {
  const cookie = /(?:^|;\s*)stepwell-language=(en|es)/.exec(document.cookie);
  try { return cookie ? cookie[1] : localStorage.getItem('stepwell-language'); } catch { return null; }
};
let spanish = (stored() ?? navigator.language).startsWith('es');
const translated = [...document.querySelectorAll('[data-es]')].map((e) => ({ e, en: e.textContent, es: e.dataset.es }));
const message = document.getElementById('message');

/** Says one of two texts: English, Spanish. */
export const say = (texts) => { message.textContent = texts[spanish ? 1 : 0]; };

function speak() {
  document.documentElement.lang = spanish ? 'es' : 'en';
  translated.forEach(({ e, en, es }) => { e.textContent = spanish ? es : en; });
  const other = document.getElementById('language');
  other.textContent = spanish ? 'English' : 'Español';
  other.lang = spanish ? 'en' : 'es';
}

export function token() {
  const match = /(?:^|;\s*)XSRF-TOKEN=([^;]*)/.exec(document.cookie);
  return match ? decodeURIComponent(match[1]) : '';
}

export const sendFields = (path, fields) => fetch(path, { method: 'POST', body: new URLSearchParams(fields),
  headers: { 'X-XSRF-TOKEN': token() }, credentials: 'same-origin' });

export const send = (path, form) => sendFields(path, new FormData(form));

/** Lets a box show what is typed in the given fields. */
export function showBy(box, ...fields) {
  box.addEventListener('change', (e) => fields.forEach((f) => { f.type = e.target.checked ? 'text' : 'password'; }));
}

document.getElementById('language').addEventListener('click', () => {
  spanish = !spanish;
  document.cookie = `stepwell-language=${spanish ? 'es' : 'en'}; path=/; max-age=31536000; samesite=lax`
    + (location.protocol === 'https:' ? '; secure' : '');
  try { localStorage.setItem('stepwell-language', spanish ? 'es' : 'en'); } catch { /* lasts as long as the page */ }
  speak();
});
speak();
