/** Changes the password of the adult who is signed in; the other sessions of the adult are over. */
import { onSubmit } from '/sign-in/entry.js';

const NO_FIT = ['That is not your password until now.', 'Esa no es su contraseña actual.'];

onSubmit('/login/password', (form) => {
  form.hidden = true;
  const saved = document.getElementById('saved');
  saved.hidden = false;
  saved.tabIndex = -1;
  saved.focus();
}, {
  401: async (response, complain) => {
    if ((await response.json().catch(() => ({}))).reason === 'signed_out') {
      location.assign('/login?next=/sign-in/password.html');
    } else {
      complain('password', NO_FIT);
    }
  },
});
