/** Sends the sign-in with the page's token and goes where the adult wanted to go. */
import { say, send, showBy } from '/sign-in/words.js';

const WORDS = {
  wrong: ['That name and password do not fit together. Check both and try again.',
    'El nombre y la contraseña no coinciden. Revíselos e intente de nuevo.'],
  many: ['Too many tries. Wait a few minutes, then try again.',
    'Demasiados intentos. Espere unos minutos e intente de nuevo.'],
  away: ['The server does not answer. Check the network and try again.',
    'El servidor no responde. Revise la red e intente de nuevo.'],
};
const password = document.getElementById('password');

/** Only a path of this server: anything else could lead the adult astray. */
export function destination(search, origin) {
  const next = new URLSearchParams(search).get('next') ?? '/';
  const url = new URL(next, origin);
  return url.origin === origin && next.startsWith('/') ? url.pathname + url.search : '/';
}

document.querySelector('form').addEventListener('submit', async (event) => {
  event.preventDefault();
  try {
    const response = await send('/login', event.target);
    const backAtLogin = response.redirected && new URL(response.url).pathname === '/login';
    if (response.status === 429) {
      say(WORDS.many);
    } else if (response.status >= 500) {
      say(WORDS.away);
    } else if (response.status === 403) {
      location.reload();
    } else if (backAtLogin && new URL(response.url).searchParams.has('first')) {
      location.assign('/sign-in/first.html');
    } else if (!response.ok || backAtLogin) {
      say(WORDS.wrong);
      password.select();
    } else {
      location.assign(destination(location.search, location.origin));
    }
  } catch {
    say(WORDS.away);
  }
});
showBy(document.getElementById('show'), password);
if (new URLSearchParams(location.search).has('out')) {
  // What the Table keeps for whoever signed out is ciphertext from now on.
  import('/table/js/vault.js').then((vault) => vault.sealAway()).catch(() => { /* nothing is kept here */ });
}
if (new URLSearchParams(location.search).has('error')) {
  say(WORDS.wrong);
}
fetch('/login/set-up').then((response) => response.json()).then((state) => {
  if (state.open) {
    location.replace('/set-up');
  }
}).catch(() => { /* said when the form is sent */ });
