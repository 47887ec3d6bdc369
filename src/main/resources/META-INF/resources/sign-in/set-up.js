/** Makes school, class and first teacher of an empty store. */
import { enter, onSubmit } from '/sign-in/entry.js';

const NO_CODE = ['That is not the code. It stands in the window where Stepwell was started; each start prints a new one.',
  'Ese no es el código. Está en la ventana donde se inició Stepwell; cada inicio imprime uno nuevo.'];

function setUpBefore() {
  document.querySelector('form').hidden = true;
  document.getElementById('done').hidden = false;
}

const zone = document.getElementById('zone');
zone.value = Intl.DateTimeFormat().resolvedOptions().timeZone ?? '';
const all = Intl.supportedValuesOf ? Intl.supportedValuesOf('timeZone') : [];
document.getElementById('zones').append(...all.map((id) => new Option(id.replaceAll('_', ' '), id)));

onSubmit('/login/set-up', (form) => enter(form.elements.username.value, form.elements.chosen.value), {
  401: (response, complain) => complain('code', NO_CODE),
  409: () => setUpBefore(),
});
fetch('/login/set-up').then((response) => response.json()).then((state) => {
  if (!state.open) {
    setUpBefore();
  }
}).catch(() => { /* said when the form is sent */ });
