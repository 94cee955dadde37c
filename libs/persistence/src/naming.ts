import { DefaultNamingStrategy } from 'typeorm';

/** Columns are the properties' names in the manner of SQL: `givenName` is stored as `given_name`. */
export class ColumnNaming extends DefaultNamingStrategy {
  override columnName(propertyName: string, customName: string | undefined): string {
    return customName ?? propertyName.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
  }
}
