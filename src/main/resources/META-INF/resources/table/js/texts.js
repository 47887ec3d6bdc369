/** Every word of the page, in English and Spanish. Names in braces are filled in. */
const TEXTS = {
  title: ['Table', 'Mesa'],
  shield: ['Initials only', 'Solo iniciales'],
  letters: ['Letters for words', 'Letras por palabras'],
  language: ['Español', 'English'],
  home: ['All screens', 'Todas las pantallas'],
  who: ['Who is at the table?', '¿Quién está en la mesa?'],
  whoHint: ['Tap the children, then start. A ring means: not seen this week.',
    'Toque a los niños y empiece. Un anillo significa: no observado esta semana.'],
  groupsToday: ['Groups of today', 'Grupos de hoy'],
  groupNumber: ['Group {n}', 'Grupo {n}'],
  now: ['now', 'ahora'],
  groupDue: ['It is the turn of group {n}.', 'Es el turno del grupo {n}.'],
  groupTake: ['End this visit, begin group {n}', 'Terminar esta visita y empezar con el grupo {n}'],
  start: ['Start', 'Empezar'],
  everyone: ['Whole class', 'Toda la clase'],
  nobody: ['Nobody', 'Nadie'],
  end: ['End visit', 'Terminar'],
  skill: ['Skill', 'Destreza'],
  number: ['Number', 'Número'],
  nextNumber: ['Next', 'Siguiente'],
  otherNumber: ['Other number', 'Otro número'],
  showNumber: ['Show it', 'Mostrarlo'],
  close: ['Close', 'Cerrar'],
  cubesOut: ['Cubes out', 'Cubos en la mesa'],
  yes: ['Yes', 'Sí'],
  no: ['No', 'No'],
  help: ['Help for the next look', 'Ayuda en lo que sigue'],
  helpNone: ['None', 'Ninguna'],
  helpCubes: ['Cubes', 'Cubos'],
  helpPrompt: ['A prompt', 'Una pista'],
  helpModelled: ['Shown first', 'Mostrado antes'],
  children: ['At the table', 'En la mesa'],
  phrases: ['What did you see?', '¿Qué vio?'],
  phrasesFor: ['What did {name} do?', '¿Qué hizo {name}?'],
  armedPhrase: ['Now tap all who did it.', 'Ahora toque a todos los que lo hicieron.'],
  manyHint: ['Tap what you saw, then all who did it.', 'Toque lo que vio y luego a todos los que lo hicieron.'],
  notYet: ['Tried, could not start', 'Lo intentó, no pudo empezar'],
  unseen: ['not seen yet', 'sin observar'],
  seen: ['seen', 'observado'],
  unseenWeek: ['not seen this week', 'sin observar esta semana'],
  last: ['Last look', 'Última observación'],
  lastNone: ['Nothing logged in this visit yet.', 'Todavía no hay nada anotado en esta visita.'],
  saving: ['Writing…', 'Guardando…'],
  saved: ['Saved on this tablet', 'Guardado en esta tableta'],
  onServer: ['On the server', 'En el servidor'],
  refused: ['The server did not take it', 'El servidor no lo aceptó'],
  notSaved: ['NOT saved. This tablet could not keep it. Write it on paper: {what}',
    'NO se guardó. Esta tableta no pudo guardarlo. Anótelo en papel: {what}'],
  undone: ['Taken back', 'Retirado'],
  undo: ['Undo', 'Deshacer'],
  takeBack: ['Take back', 'Retirar'],
  otherChild: ['It was', 'Fue'],
  more: ['Add to this look', 'Añadir a esta observación'],
  moreTags: ['More', 'Más'],
  note: ['Note about {name}', 'Nota sobre {name}'],
  addNote: ['Add note', 'Añadir nota'],
  said: ['said it', 'lo dijo'], drew: ['drew it', 'lo dibujó'], showed: ['showed it', 'lo mostró'],
  home_language: ['home language', 'lengua del hogar'], self_corrected: ['put it right', 'se corrigió'],
  wrong_total: ['good way, slip', 'buen camino, desliz'], copied: ['copied', 'copió'],
  not_valid: ['does not count', 'no cuenta'],
  prompt: ['with a prompt', 'con una pista'], modelled: ['shown first', 'mostrado antes'],
  cubes: ['with cubes', 'con cubos'], none: ['without help', 'sin ayuda'],
  allSent: ['All on the server', 'Todo en el servidor'],
  wait: ['{count} on this tablet, since {since}', '{count} en esta tableta, desde {since}'],
  refusedCount: ['{count} not taken', '{count} no aceptadas'],
  othersCount: ['{count} of another adult', '{count} de otra persona'],
  outbox: ['What waits on this tablet', 'Lo que espera en esta tableta'],
  sendNow: ['Send now', 'Enviar ahora'],
  toFile: ['Save as a file', 'Guardar como archivo'],
  fileHint: ['If nothing else helps: the file can be read in under People and files. It names children: keep it safe.',
    'Si nada más funciona: el archivo se puede cargar en Personas y archivos. Nombra a niños: guárdelo bien.'],
  sealed: ['They are sealed. They go out by themselves, under that adult only, or when that adult signs in here.',
    'Están sellados. Salen solos, solo a nombre de esa persona, o cuando esa persona inicie sesión aquí.'],
  tryAgain: ['Send again', 'Enviar otra vez'],
  asNew: ['Send as a new look', 'Enviar como nueva'],
  toChild: ['Send for another child', 'Enviar para otro niño'],
  drop: ['Throw away', 'Descartar'],
  dropSure: ['Throw it away for good', 'Descartar para siempre'],
  noReason: ['no reason given', 'sin motivo'],
  large: ['It is too large. Shorten the note.', 'Es demasiado grande. Acorte la nota.'],
  malformed: ['The server could not read it.', 'El servidor no pudo leerla.'],
  network: ['No network. Looks stay on this tablet and go out by themselves.',
    'Sin red. Lo anotado queda en esta tableta y saldrá solo.'],
  gateway: ['The network answers, but not our server. Looks stay on this tablet.',
    'La red responde, pero no nuestro servidor. Lo anotado queda en esta tableta.'],
  server: ['The server has trouble. Looks stay on this tablet and go out by themselves.',
    'El servidor tiene problemas. Lo anotado queda en esta tableta y saldrá solo.'],
  busy: ['The server is busy. Looks go out a little later.', 'El servidor está ocupado. Saldrán un poco más tarde.'],
  signin: ['Your sign-in has ended. Looks stay on this tablet until you sign in again.',
    'Su sesión terminó. Lo anotado queda en esta tableta hasta que inicie sesión.'],
  token: ['Checking your sign-in.', 'Comprobando su sesión.'],
  missing: ['There is no class for you yet. Ask the class\'s teacher.',
    'Todavía no hay una clase para usted. Pregunte al docente.'],
  other: ['Somebody else has signed in on this tablet. Your looks stay sealed until you sign in again.',
    'Otra persona inició sesión en esta tableta. Lo suyo queda guardado hasta que inicie sesión.'],
  tablet: ['This tablet refuses to store. Check its free space.',
    'Esta tableta no permite guardar. Revise el espacio libre.'],
  noStore: ['This browser keeps nothing (private window?). Looks can not be saved here.',
    'Este navegador no guarda nada (¿ventana privada?). Aquí no se puede anotar.'],
  insecure: [
    'This address is not secure (https). Looks are kept, but not encrypted, without a PIN, and the Table cannot open without network. Ask for https.',
    'Esta dirección no es segura (https). Lo anotado se guarda, pero sin cifrar y sin PIN, y la mesa no abre sin red. Pida https.'],
  notPersistent: [
    'This browser may clear its storage when space is short or after a week unused. Send before then; on an iPad add the Table to the home screen.',
    'Este navegador puede borrar lo guardado si falta espacio o tras una semana sin uso. Envíe antes; en un iPad añada la mesa a la pantalla de inicio.'],
  emptied: [
    'This browser has emptied what it kept. Looks that had not reached the server are gone: at most {count}, the first from {since}. Log again what you know for certain.',
    'Este navegador vació lo que guardaba. Se perdieron observaciones que no habían llegado al servidor: como mucho {count}, la primera de {since}. Anote de nuevo lo que sepa con certeza.'],
  emptiedRead: ['I have read it', 'Lo he leído'],
  clockOff: ['This tablet\'s clock is off by {much}. Each look carries the difference.',
    'El reloj de esta tableta difiere {much}. Cada observación lleva la diferencia.'],
  days: ['{n} days', '{n} días'], hours: ['{n} h', '{n} h'], minutes: ['{n} min', '{n} min'],
  offlineClass: ['Opened from this tablet, as it was {when}.', 'Abierto desde esta tableta, como estaba {when}.'],
  gateTitle: ['Sign in to open the Table', 'Inicie sesión para abrir la mesa'],
  gateOffline: ['This tablet has no class for today. Open the Table once with network.',
    'Esta tableta no tiene la clase de hoy. Abra la mesa una vez con red.'],
  gateWait: [
    '{count} looks wait on this tablet. They go out under the adult who made them, at the latest after that sign-in.',
    '{count} observaciones esperan en esta tableta. Saldrán a nombre de quien las anotó, a más tardar cuando inicie sesión.'],
  signInButton: ['Sign in', 'Iniciar sesión'],
  signOut: ['Sign out', 'Cerrar sesión'],
  out: ['Signed out. What this tablet keeps is sealed.', 'Sesión cerrada. Lo que guarda esta tableta está sellado.'],
  pinEnded: ['Five wrong PINs: signed out. What waits is sealed and not lost.',
    'Cinco PIN incorrectos: sesión cerrada. Lo que espera está sellado y no se pierde.'],
  pinChoose: ['A PIN for this tablet', 'Un PIN para esta tableta'],
  pinHint: ['4 to 8 digits, asked for after five minutes untouched. Take none that you use elsewhere.',
    'De 4 a 8 cifras; se pide tras cinco minutos sin uso. No use uno que ya usa en otro lugar.'],
  pinOther: ['Another PIN for this tablet', 'Otro PIN para esta tableta'],
  pinNew: ['PIN', 'PIN'], pinAgain: ['PIN again', 'PIN otra vez'], pinSet: ['Use this PIN', 'Usar este PIN'],
  pinDiffer: ['The two differ. Type the same PIN twice.', 'No son iguales. Escriba el mismo PIN dos veces.'],
  pinAsk: ['Your PIN on this tablet', 'Su PIN en esta tableta'],
  pinOpen: ['Open', 'Abrir'],
  pinWrong: ['That is not it. {n} more tries, then you are signed out.',
    'No es correcto. {n} intentos más y se cerrará la sesión.'],
  pinLast: ['That is not it. One more try, then you are signed out.',
    'No es correcto. Un intento más y se cerrará la sesión.'],
  pinWait: ['Wait {n} seconds, then try again.', 'Espere {n} segundos e intente de nuevo.'],
  initialsChoose: ['Initials to show', 'Iniciales que se muestran'],
  initialsSame: ['Two children have the same. Change one.', 'Dos niños tienen las mismas. Cambie una.'],
  keep: ['Keep', 'Guardar'],
  sealedHere: ['Sealed: open it with network, signed in as yourself.',
    'Sellado: ábralo con red y con su sesión iniciada.'],
  otherTab: ['An older Table is open in another tab with a visit. End that visit or close that tab.',
    'Otra pestaña tiene abierta una mesa anterior con una visita. Termínela o cierre esa pestaña.'],
  zone: ['This tablet is set to another time zone. The school\'s time ({zone}) decides the day of a look.',
    'Esta tableta tiene otra zona horaria. El día lo decide la hora de la escuela ({zone}).'],
  retry: ['Try again', 'Intentar de nuevo'],
  lastVisit: ['Last visit', 'Última visita'],
  looks: ['{n} looks', '{n} observaciones'],
  look: ['1 look', '1 observación'],
  stop: ['Stop', 'Parar'],
  stopped: ['Stopped. Nothing is closed, nothing is lost, the clock stands.',
    'En pausa. Nada se cierra, nada se pierde, el reloj está parado.'],
  goOn: ['Go on', 'Seguir'],
  covered: ['Tap to go on', 'Toque para seguir'],
  tablePage: ['Looks at the teacher table', 'Observaciones en la mesa'],
};

/** One choice for every page of this browser: the cookie that the screens read too, else what this page kept. */
const stored = () => {
  const cookie = /(?:^|;\s*)stepwell-language=(en|es)/.exec(document.cookie);
  try { return cookie ? cookie[1] : localStorage.getItem('stepwell-language'); } catch { return null; }
};
let language = (stored() ?? navigator.language ?? 'en').startsWith('es') ? 'es' : 'en';

export const currentLanguage = () => language;

export function switchLanguage() {
  language = language === 'en' ? 'es' : 'en';
  document.cookie = `stepwell-language=${language}; path=/; max-age=31536000; samesite=lax`
    + (location.protocol === 'https:' ? '; secure' : '');
  try { localStorage.setItem('stepwell-language', language); } catch { /* the choice lasts as long as the page */ }
}

/** The sentence for a key, with {names} filled in. A key without a sentence is a mistake and says so. */
export function t(key, values = {}) {
  const pair = TEXTS[key];
  if (!pair) {
    throw new Error(`no text for ${key}`);
  }
  return pair[language === 'es' ? 1 : 0].replace(/\{(\w+)\}/g, (_, name) => String(values[name]));
}

export const hasText = (key) => key in TEXTS;

/** The reader's language of a text that the server gave in several. */
export const inLanguage = (texts) => texts?.[language] ?? texts?.en ?? '';
