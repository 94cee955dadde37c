import type { InAllLanguages, Language } from '#scoreboard';
import { LANGUAGES } from '#scoreboard';

/** What only the pages of the server say, beside the words of the tables. */
const PAGE_WORDS = {
  meets: ['Meets', 'Wettkämpfe', 'Compétitions', 'Competiciones', 'Kilpailut'],
  noMeets: [
    'No meet is published here yet.',
    'Hier ist noch kein Wettkampf veröffentlicht.',
    'Aucune compétition n’est encore publiée ici.',
    'Aún no se ha publicado ninguna competición.',
    'Täällä ei ole vielä julkaistu kilpailua.',
  ],
  skip: ['To the table', 'Zur Tabelle', 'Vers le tableau', 'A la tabla', 'Taulukkoon'],
  where: ['You are here', 'Sie sind hier', 'Vous êtes ici', 'Usted está aquí', 'Olet tässä'],
  languages: ['Language', 'Sprache', 'Langue', 'Idioma', 'Kieli'],
  more: ['More of it', 'Mehr davon', 'Autres formes', 'Más', 'Lisää'],
  print: ['Print (PDF)', 'Drucken (PDF)', 'Imprimer (PDF)', 'Imprimir (PDF)', 'Tulosta (PDF)'],
  table: ['Table (CSV)', 'Tabelle (CSV)', 'Tableau (CSV)', 'Tabla (CSV)', 'Taulukko (CSV)'],
  data: ['Data (JSON)', 'Daten (JSON)', 'Données (JSON)', 'Datos (JSON)', 'Tiedot (JSON)'],
  sheet: ['Sheet (JSON)', 'Bogen (JSON)', 'Feuille (JSON)', 'Hoja (JSON)', 'Pöytäkirja (JSON)'],
  calendar: ['Calendar', 'Kalender', 'Agenda', 'Calendario', 'Kalenteri'],
  pointsFrom: [
    'Where the points come from',
    'Woher die Punkte kommen',
    'D’où viennent les points',
    'De dónde vienen los puntos',
    'Mistä pisteet tulevat',
  ],
  byHand: [
    'entered by hand',
    'von Hand eingetragen',
    'saisi à la main',
    'introducido a mano',
    'syötetty käsin',
  ],
  announcer: [
    'For the announcer',
    'Für die Ansage',
    'Pour l’annonceur',
    'Para la megafonía',
    'Kuuluttajalle',
  ],
  screen: ['For a projector', 'Für eine Leinwand', 'Pour un écran', 'Para una pantalla', 'Näyttötaululle'],
  embed: [
    'Put this table on your own page',
    'Diese Tabelle auf die eigene Seite setzen',
    'Mettre ce tableau sur votre page',
    'Poner esta tabla en su página',
    'Lisää tämä taulukko omalle sivullesi',
  ],
  embedHow: [
    'Paste this where the table should be. Without scripts the frame shows the same table.',
    'Dies dort einfügen, wo die Tabelle stehen soll. Ohne Skripte zeigt der Rahmen dieselbe Tabelle.',
    'Collez ceci à l’endroit du tableau. Sans scripts, le cadre montre le même tableau.',
    'Pegue esto donde deba estar la tabla. Sin scripts, el marco muestra la misma tabla.',
    'Liitä tämä taulukon paikalle. Ilman skriptejä kehys näyttää saman taulukon.',
  ],
  notHere: [
    'There is nothing here, or it is not public.',
    'Hier ist nichts, oder es ist nicht öffentlich.',
    'Il n’y a rien ici, ou ce n’est pas public.',
    'Aquí no hay nada, o no es público.',
    'Täällä ei ole mitään, tai se ei ole julkista.',
  ],
  safety: [
    'A table is no clearance: at the place the officials, the venue’s rules and local law decide.',
    'Eine Tabelle gibt nichts frei: Am Platz entscheiden Kampfgericht, Platzordnung und örtliches Recht.',
    'Un tableau n’autorise rien : sur place décident les officiels, le règlement du lieu et la loi.',
    'Una tabla no autoriza nada: en el lugar deciden los jueces, las normas del recinto y la ley.',
    'Taulukko ei ole lupa: paikalla päättävät toimitsijat, kentän säännöt ja laki.',
  ],
} as const satisfies Record<string, InAllLanguages>;

export type PageWord = keyof typeof PAGE_WORDS;

export function pageWord(word: PageWord, language: Language): string {
  return PAGE_WORDS[word][LANGUAGES.indexOf(language)]!;
}

/** How each language calls itself. */
export const OWN_NAMES: Readonly<Record<Language, string>> = {
  en: 'English',
  de: 'Deutsch',
  fr: 'Français',
  es: 'Español',
  fi: 'Suomi',
};
