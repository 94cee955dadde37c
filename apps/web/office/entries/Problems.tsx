import { e } from '../../labels/entries/words.js';
import type { Problem } from './documents.js';

/** The server says the place in its sentence, too; here it has columns of its own. */
const PLACE = /^Line \d+(, \w+)?: /;

/** What is wrong with a table, by line and column, in the words of the server. */
export function Problems({ problems }: { readonly problems: readonly Problem[] }) {
  if (problems.length === 0) return null;
  return (
    <div class="wide">
      <table>
        <caption>{e('problems.title')}</caption>
        <thead>
          <tr>
            <th scope="col">{e('problems.line')}</th>
            <th scope="col">{e('problems.column')}</th>
            <th scope="col">{e('problems.what')}</th>
            <th scope="col">{e('problems.remedy')}</th>
          </tr>
        </thead>
        <tbody>
          {problems.map(({ code, line, column, message, remedy }, at) => (
            <tr key={`${at} ${code}`}>
              <td class="number">{line ?? ''}</td>
              <td>{column ?? ''}</td>
              <td>{message.replace(PLACE, '')}</td>
              <td>{remedy}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
