import type { Unit } from '#rules';
import { markText, windText } from '../../labels/format.js';
import { t, tCode } from '../../labels/languages.js';
import type { Body, Journalled } from '../competition/request.js';

/** What an entry says, as it is read aloud: `48,62`, `7.05 +1.3`, `Failure`, `1.88 cleared`. */
export function bodyText(body: Body | Journalled, unit: Unit): string {
  switch (body.kind) {
    case 'attempt':
    case 'correction': {
      if (body.mark === null) return t(`outcome.${body.outcome}`);
      const wind = body.wind === null ? '' : ` ${windText(body.wind)}`;
      return `${markText(body.mark, unit)}${wind}`;
    }
    case 'jump':
    case 'jump-off':
      return `${markText(body.height, unit)} ${t(`outcome.${body.outcome}`)}`;
    case 'jump-correction':
      return t(`outcome.${body.outcome}`);
    case 'wind':
      return `${t('wind')} ${windText(body.wind)}`;
    case 'bar':
      return `${t('bar')} ${markText(body.height, unit)}`;
    case 'uprights':
      return `${t('bar.uprights')} ${t('bar.uprightsAt', { cm: body.behindZeroCm })}`;
    case 'move':
    case 'jump-move':
      return t('trial.wrongLine');
    case 'reversal':
      return t('trial.takeBack');
    case 'replacement':
      return t('trial.replace');
    case 'start':
      return t(body.status === 'DNS' ? 'more.dns' : 'more.starts');
    case 'ruling':
      return t(body.decision === 'count' ? 'question.count' : 'question.dismiss');
    case 'interruption':
      return t('stop');
    case 'all-clear':
      return t('clear.confirm');
    case 'jump-off-declined':
      return t('jumpOff.decline');
    default:
      return besideText(body);
  }
}

/** What is written down beside the trials, and changes of the start list. */
function besideText(body: Body | Journalled): string {
  switch (body.kind) {
    case 'note':
      return `${t('note')}: ${tCode('note', body.about)}`;
    case 'excuse':
      return body.to === null ? t('away.back') : t('away.to', { to: body.to });
    case 'card-signed':
      return t('card.sign');
    case 'late-entry':
      return `${t('late')} ${body.bib}`;
    case 'bibs':
      return `${t('list.bib')} ${body.bibs.map(({ bib }) => bib).join(', ')}`;
    case 'flight':
      return t('call.flight', { flight: body.flight });
    case 'match':
      return t('late.matched');
    case 'sign-off':
      return t('card.official');
    default:
      return body.kind;
  }
}
