/** Makes the account that a code stands for. The code may come along behind the # of the address, which no server sees. */
import { enter, onSubmit } from '/sign-in/entry.js';

const NO_CODE = ['This code opens nothing: it may be mistyped, used, taken back, or older than 14 days. Check it, or ask'
  + ' for a new one.', 'Este código no abre nada: quizá está mal escrito, usado, retirado o tiene más de 14 días. Revíselo'
  + ' o pida otro.'];

document.getElementById('code').value = decodeURIComponent(location.hash.slice(1));
onSubmit('/login/invited', (form) => enter(form.elements.username.value, form.elements.chosen.value), {
  401: (response, complain) => complain('code', NO_CODE),
});
