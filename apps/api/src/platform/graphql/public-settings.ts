/** What the installation decides about the public contract. */
export class PublicSettings {
  constructor(
    /** Free documents and introspection are answered: for development alone. */
    readonly isOpen: boolean,
  ) {}
}
