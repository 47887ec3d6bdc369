/** A form that chooses a name or a password: sends it, and says beside the field what cannot be taken. */
import { say, send, sendFields, showBy } from '/sign-in/words.js';

const FAULTS = {
  blank: ['Please fill this in.', 'Rellene este campo.'],
  long: ['That is too long for this field.', 'Es demasiado largo para este campo.'],
  signs: ['There is a space or a sign in it that cannot be used here.', 'Tiene un espacio o un signo que aquí no sirve.'],
  taken: ['That sign-in name is taken. Choose another.', 'Ese nombre de usuario ya existe. Elija otro.'],
  zone: ['That is no time zone of the list. Type a city to search, such as Chicago.',
    'No es una zona horaria de la lista. Escriba una ciudad para buscar, como Chicago.'],
  too_short: ['Too short: 15 characters or more. A few words in a row are easy to keep.',
    'Demasiado corta: 15 caracteres o más. Unas palabras seguidas se recuerdan bien.'],
  too_long: ['Too long: 128 characters at most.', 'Demasiado larga: 128 caracteres como máximo.'],
  too_near: ['Choose one that is not the one before and holds neither your sign-in name nor the name of the school.',
    'Elija una que no sea la anterior ni contenga su nombre de usuario o el de la escuela.'],
  common: ['That one is among the first that anybody would try. Choose a few words that nobody would guess together.',
    'Es de las primeras que cualquiera probaría. Elija unas palabras que nadie adivinaría juntas.'],
  many: ['Too many tries. Wait a few minutes, then try again.',
    'Demasiados intentos. Espere unos minutos e intente de nuevo.'],
  away: ['The server does not answer. Check the network and try again.',
    'El servidor no responde. Revise la red e intente de nuevo.'],
};

/** Signs in with what was just chosen; else leads to the page where that is done. */
export async function enter(name, password) {
  try {
    const response = await sendFields('/login', { username: name, password });
    location.assign(response.ok && new URL(response.url).pathname !== '/login' ? '/' : '/login');
  } catch {
    location.assign('/login');
  }
}

const message = document.getElementById('message');

/** Says it below the field, where the eye is; without a field above the button. */
function complain(form, field, texts) {
  const wrong = form.elements[field];
  if (wrong) {
    (document.getElementById(wrong.getAttribute('aria-describedby')) ?? wrong).after(message);
    wrong.setAttribute('aria-invalid', 'true');
    wrong.focus();
  } else {
    form.querySelector('button[type=submit]').before(message);
  }
  say(texts);
}

/** Sends the form; other statuses than these are answered by the page: a function by status, given the answer. */
export function onSubmit(path, done, answers) {
  const form = document.querySelector('form');
  form.addEventListener('submit', async (event) => {
    event.preventDefault();
    [...form.elements].forEach((element) => element.removeAttribute('aria-invalid'));
    const button = form.querySelector('button[type=submit]');
    button.disabled = true;
    try {
      const response = await send(path, form);
      if (response.ok) {
        await done(form);
      } else if (answers[response.status]) {
        await answers[response.status](response, (field, texts) => complain(form, field, texts));
      } else if (response.status === 400) {
        const fault = await response.json().catch(() => ({}));
        complain(form, fault.field ?? 'chosen', FAULTS[fault.reason] ?? FAULTS.away);
      } else if (response.status === 403) {
        location.reload();
      } else {
        complain(form, '', response.status === 429 ? FAULTS.many : FAULTS.away);
      }
    } catch {
      complain(form, '', FAULTS.away);
    } finally {
      button.disabled = false;
    }
  });
  const fields = ['password', 'chosen'].map((id) => document.getElementById(id)).filter(Boolean);
  showBy(document.getElementById('show'), ...fields);
}
