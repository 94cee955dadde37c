import { useDesk } from '../desk-context.js';

/** Why the last entry was not taken, where somebody just tried. */
export function Refused() {
  const said = useDesk().said.value;
  if (said?.kind !== 'refused') return null;
  return (
    <p class="notice refused" role="alert" lang="en">
      {said.text} {said.remedy}
    </p>
  );
}
