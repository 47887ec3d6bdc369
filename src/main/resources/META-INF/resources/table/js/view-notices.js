/** What the adult has to know above all the rest: trouble, the clock, what the browser may do or has done. */
import * as clock from './clock.js';
import * as tally from './tally.js';
import { button, draw, h } from './dom.js';
import { t } from './texts.js';
import { hour } from './view-outbox.js';

function clockText() {
  const off = Math.abs(clock.offsetMs() ?? 0);
  if (off < clock.WORTH_SAYING_MS) {
    return null;
  }
  const minutes = Math.round(off / 60000);
  const much = minutes >= 2 * 24 * 60 ? t('days', { n: Math.round(minutes / (24 * 60)) })
    : minutes >= 90 ? t('hours', { n: Math.round(minutes / 60) }) : t('minutes', { n: minutes });
  return t('clockOff', { much });
}

/** Said only when the clock on the wall of the school shows another hour than the tablet. */
function zoneText(zone) {
  const hourIn = (timeZone) => new Date().toLocaleString('en', { timeZone, hour12: false, dateStyle: 'short',
    timeStyle: 'short' });
  return zone && hourIn(zone) !== hourIn(undefined) ? t('zone', { zone: zone.replaceAll('_', ' ') }) : null;
}

/** Drawn only when a line has changed. `state` is what main.js knows of the page. */
export function drawNotices(box, state) {
  const { visit, trouble, offlineSince, otherTab, persistent } = state;
  const gone = tally.gone();
  const lines = [
    gone && t('emptied', { count: gone.waiting, since: hour(gone.since) }),
    !window.isSecureContext && t('insecure'),
    trouble && t(trouble),
    offlineSince && t('offlineClass', { when: hour(offlineSince) }),
    clockText(),
    otherTab && t('otherTab'),
    zoneText(visit?.table.zone),
    visit && !visit.open && !persistent && t('notPersistent'),
  ].filter(Boolean);
  if (box.dataset.said === lines.join('\n')) {
    return;
  }
  box.dataset.said = lines.join('\n');
  draw(box, lines.map((line) => h('p', {}, line)),
    gone && button('emptied-read', () => { tally.read(); drawNotices(box, state); }, {}, t('emptiedRead')),
    trouble === 'signin' && visit && h('a', { class: 'as-button', href: '/login?next=/table/' }, t('signInButton')));
}
