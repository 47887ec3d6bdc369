/** Changes a one-time password into one of the adult's own choice, then leads to the sign-in page. */
import { say, send, showBy } from '/sign-in/words.js';

const WORDS = {
  no_fit: ['That name and one-time password do not fit together, or its seven days are over. Check both, or ask for a'
    + ' new one.', 'El nombre y la contraseña de un solo uso no coinciden, o ya pasaron sus siete días. Revíselos o pida'
    + ' otra.'],
  too_short: ['Too short: 12 characters or more. A few words in a row are easy to keep.',
    'Demasiado corta: 12 caracteres o más. Unas palabras seguidas se recuerdan bien.'],
  too_long: ['Too long: 128 characters at most.', 'Demasiado larga: 128 caracteres como máximo.'],
  too_near: ['Choose one that is neither the one-time password nor holds your sign-in name.',
    'Elija una que no sea la de un solo uso ni contenga su nombre de usuario.'],
  many: ['Too many tries. Wait a few minutes, then try again.',
    'Demasiados intentos. Espere unos minutos e intente de nuevo.'],
  away: ['The server does not answer. Check the network and try again.',
    'El servidor no responde. Revise la red e intente de nuevo.'],
};

document.querySelector('form').addEventListener('submit', async (event) => {
  event.preventDefault();
  try {
    const response = await send('/login/first', event.target);
    if (response.ok) {
      location.assign('/login');
    } else if (response.status === 403) {
      location.assign('/login');
    } else if (response.status === 429) {
      say(WORDS.many);
    } else if (response.status === 400) {
      say(WORDS[(await response.json()).reason] ?? WORDS.away);
    } else {
      say(response.status === 401 ? WORDS.no_fit : WORDS.away);
    }
  } catch {
    say(WORDS.away);
  }
});
showBy(document.getElementById('show'), document.getElementById('password'), document.getElementById('chosen'));
