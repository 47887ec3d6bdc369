/** Changes a one-time password into one of the adult's own choice, then signs in. */
import { enter, onSubmit } from '/sign-in/entry.js';

const NO_FIT = ['That name and one-time password do not fit together, or its seven days are over. Check both, or ask for'
  + ' a new one.', 'El nombre y la contraseña de un solo uso no coinciden, o ya pasaron sus siete días. Revíselos o pida'
  + ' otra.'];

onSubmit('/login/first', (form) => enter(form.elements.username.value, form.elements.chosen.value), {
  401: (response, complain) => complain('password', NO_FIT),
});
