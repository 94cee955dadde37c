import { t } from '../../labels/languages.js';
import { Button } from '../../ui/Button.jsx';
import { useNotebook } from '../notebook.js';

/** What came of the last thing that was done here: for the eye and for a screen reader. */
export function SaidLine() {
  const { said } = useNotebook();
  return (
    <div class="said-line" role="status">
      {said.value && (
        <div class={`notice ${said.value.kind}`}>
          <p>{said.value.text}</p>
          {said.value.remedy && <p>{said.value.remedy}</p>}
          <Button kind="quiet" onPress={() => (said.value = null)}>
            {t('close')}
          </Button>
        </div>
      )}
    </div>
  );
}
