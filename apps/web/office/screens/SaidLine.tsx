import { a } from '../../labels/account/words.js';
import { Button } from '../../ui/Button.jsx';
import { t } from '../../labels/languages.js';
import { useOffice } from '../office.js';

/** What came of the last thing that was done here: for the eye and for a screen reader. */
export function SaidLine() {
  const office = useOffice();
  const said = office.said.value;
  return (
    <div class="said-line" role="status">
      {said && (
        <div class={`notice ${said.kind}`}>
          <p>{said.text}</p>
          {said.rule && <p class="fine">{a('said.rule', { rule: said.rule })}</p>}
          {said.remedy && <p>{said.remedy}</p>}
          <Button kind="quiet" onPress={() => office.say(null)}>
            {t('close')}
          </Button>
        </div>
      )}
    </div>
  );
}
