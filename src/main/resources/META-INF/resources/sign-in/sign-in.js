/** Sends the sign-in with the page's token and goes where the adult wanted to go. */
const WORDS = {
  wrong: ['That name and password do not fit together. Check both and try again.',
    'El nombre y la contraseña no coinciden. Revíselos e intente de nuevo.'],
  many: ['Too many tries. Wait a few minutes, then try again.',
    'Demasiados intentos. Espere unos minutos e intente de nuevo.'],
  away: ['The server does not answer. Check the network and try again.',
    'El servidor no responde. Revise la red e intente de nuevo.'],
};
const stored = () => { try { return localStorage.getItem('stepwell-language'); } catch { return null; } };
let spanish = (stored() ?? navigator.language).startsWith('es');
const translated = [...document.querySelectorAll('[data-es]')].map((e) => ({ e, en: e.textContent, es: e.dataset.es }));
const message = document.getElementById('message');
const password = document.getElementById('password');
const say = (key) => { message.textContent = WORDS[key][spanish ? 1 : 0]; };

function speak() {
  document.documentElement.lang = spanish ? 'es' : 'en';
  translated.forEach(({ e, en, es }) => { e.textContent = spanish ? es : en; });
  const other = document.getElementById('language');
  other.textContent = spanish ? 'English' : 'Español';
  other.lang = spanish ? 'en' : 'es';
}

/** Only a path of this server: anything else could lead the adult astray. */
export function destination(search, origin) {
  const next = new URLSearchParams(search).get('next') ?? '/';
  const url = new URL(next, origin);
  return url.origin === origin && next.startsWith('/') ? url.pathname + url.search : '/';
}

function token() {
  const match = /(?:^|;\s*)XSRF-TOKEN=([^;]*)/.exec(document.cookie);
  return match ? decodeURIComponent(match[1]) : '';
}

document.querySelector('form').addEventListener('submit', async (event) => {
  event.preventDefault();
  try {
    const response = await fetch('/login', { method: 'POST', body: new URLSearchParams(new FormData(event.target)),
      headers: { 'X-XSRF-TOKEN': token() }, credentials: 'same-origin' });
    const backAtLogin = response.redirected && new URL(response.url).pathname === '/login';
    if (response.status === 429) {
      say('many');
    } else if (response.status >= 500) {
      say('away');
    } else if (response.status === 403) {
      location.reload();
    } else if (!response.ok || backAtLogin) {
      say('wrong');
      password.select();
    } else {
      location.assign(destination(location.search, location.origin));
    }
  } catch {
    say('away');
  }
});
document.getElementById('show').addEventListener('change', (e) => { password.type = e.target.checked ? 'text' : 'password'; });
document.getElementById('language').addEventListener('click', () => {
  spanish = !spanish;
  try { localStorage.setItem('stepwell-language', spanish ? 'es' : 'en'); } catch { /* lasts as long as the page */ }
  speak();
});
if (new URLSearchParams(location.search).has('error')) {
  say('wrong');
}
speak();
