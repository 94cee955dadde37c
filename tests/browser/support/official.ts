import type { Page } from 'playwright-core';
import { en } from '../../../apps/web/labels/en.js';

/** Somebody at the circle who works with the desk, by pointer or by keyboard. */
export abstract class Official {
  constructor(readonly page: Page) {}

  /** Enters one trial of whoever is up; ends when this device has it. */
  async enter(bib: string, cell: string): Promise<void> {
    await this.page.locator('.up .up-who .bib', { hasText: new RegExp(`^${bib}$`) }).waitFor();
    await this.write(cell);
    await this.page.locator('.said .notice').waitFor();
    await this.isSaved();
  }

  /** Ends when the desk says that everything is on this device. */
  async isSaved(): Promise<void> {
    await this.page.locator('[data-saved="sent"], [data-saved="waiting"]').waitFor();
  }

  /** Ends when the server has answered for everything. */
  async isSent(): Promise<void> {
    await this.page.locator('[data-saved="sent"]').waitFor({ timeout: 60_000 });
  }

  async see(tab: 'entry' | 'standing' | 'more'): Promise<void> {
    await this.page.locator(`.tabs .tab.to-${tab}`).click();
  }

  button(name: string) {
    return this.page.getByRole('button', { name, exact: true });
  }

  protected abstract write(cell: string): Promise<void>;
}

/** Which button says how a trial ended that has no mark. */
const OUTCOMES: Readonly<Record<string, string>> = {
  X: en['outcome.foul'],
  '-': en['outcome.pass'],
  r: en['outcome.retired'],
  O: en['outcome.unmeasured'],
};

/** At a bar: how the jump ended, then the second look. */
export class BarOfficial extends Official {
  protected override async write(letter: string): Promise<void> {
    await this.page
      .locator('.at-bar .button', { has: this.page.locator(`text="${letter.replace('-', '–')}"`) })
      .click();
    await this.button(en.record).click();
  }
}

/** With one thumb: digits on the number pad, then no more than three taps. */
export class ThumbOfficial extends Official {
  protected override async write(cell: string): Promise<void> {
    const [word = '', foul] = cell.split(' ');
    const outcome = OUTCOMES[word];
    if (outcome === undefined) {
      for (const digit of word.replace('.', '')) await this.button(digit).click();
      await this.button(en.readBack).click();
    } else {
      await this.page.locator('.outcomes .button', { hasText: outcome }).first().click();
      if (foul) await this.page.locator(`.read-back .chip input[value="${foul}"]`).check();
    }
    await this.button(en.record).click();
  }
}

/** With a keyboard alone: as on a field card, and twice Enter. */
export class KeyboardOfficial extends Official {
  protected override async write(cell: string): Promise<void> {
    const { keyboard } = this.page;
    const [word = '', foul] = cell.split(' ');
    await keyboard.type(word.replace('.', ''));
    await keyboard.press('Enter');
    await this.page.locator('.read-back').waitFor();
    if (foul) {
      // The reasons stand after both buttons: two steps on, down to the one that is meant, and back.
      await keyboard.press('Tab');
      await keyboard.press('Tab');
      while ((await this.page.locator('.read-back input:checked').getAttribute('value')) !== foul)
        await keyboard.press('ArrowDown');
      await keyboard.press('Shift+Tab');
      await keyboard.press('Shift+Tab');
    }
    await keyboard.press('Enter');
  }
}
