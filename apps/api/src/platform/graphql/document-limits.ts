import {
  GraphQLError,
  Kind,
  type ASTVisitor,
  type DocumentNode,
  type FragmentDefinitionNode,
  type SelectionSetNode,
  type ValidationContext,
} from 'graphql';
import { ApiError } from '../errors/api-error.js';
import { LIMITS } from './limits.js';

/** One operation per document: the compiled form of a document is kept by the document alone. */
export function OneOperation(context: ValidationContext): ASTVisitor {
  return {
    Document(document) {
      const count = document.definitions.filter((one) => one.kind === Kind.OPERATION_DEFINITION).length;
      if (count > 1) context.reportError(new GraphQLError('Send one operation per document.'));
    },
  };
}

/** One try to prove who one is in a document: aliases are no way to send a list of passwords. */
export function OneCredential(context: ValidationContext): ASTVisitor {
  let count = 0;
  return {
    Field() {
      if (context.getFieldDef()?.extensions.credential !== true) return;
      count += 1;
      if (count === 2) context.reportError(tooExpensive('A document may prove once who is asking.'));
    },
  };
}

/** Counts aliases, directives, fragment spreads and root fields. `__typename` has no exemption. */
export function Amounts(context: ValidationContext): ASTVisitor {
  const counted = { aliases: 0, directives: 0, fragmentSpreads: 0, rootFields: 0 };
  const count = (what: keyof typeof counted, by = 1): void => {
    counted[what] += by;
    if (counted[what] > LIMITS[what] && counted[what] - by <= LIMITS[what]) {
      context.reportError(tooExpensive(`A document may have at most ${LIMITS[what]} ${WORDS[what]}.`));
    }
  };
  return {
    Field(field) {
      if (field.alias) count('aliases');
    },
    FragmentSpread() {
      count('fragmentSpreads');
    },
    Directive() {
      count('directives');
    },
    OperationDefinition(operation) {
      count('rootFields', operation.selectionSet.selections.length);
    },
  };
}

const WORDS = {
  aliases: 'aliases',
  directives: 'directives',
  fragmentSpreads: 'fragment spreads',
  rootFields: 'fields at the root',
} as const;

/** Limits how deep selections nest, through fragments too. Fragment cycles are another rule's finding. */
export function Depth(context: ValidationContext): ASTVisitor {
  return {
    OperationDefinition(operation) {
      const depth = depthOf(operation.selectionSet, fragmentsOf(context.getDocument()), new Map());
      if (depth > LIMITS.depth) {
        context.reportError(tooExpensive(`Selections may nest at most ${LIMITS.depth} deep.`));
      }
    },
  };
}

export function tooExpensive(message: string): ApiError {
  return new ApiError('QUERY_TOO_EXPENSIVE', message, { status: 400 });
}

export type Fragments = ReadonlyMap<string, FragmentDefinitionNode>;

export function fragmentsOf(document: DocumentNode): Fragments {
  return new Map(
    document.definitions
      .filter((one) => one.kind === Kind.FRAGMENT_DEFINITION)
      .map((fragment) => [fragment.name.value, fragment]),
  );
}

/** Each fragment is measured once: chains of fragments that name each other twice would double without end. */
function depthOf(set: SelectionSetNode, fragments: Fragments, measured: Map<string, number>): number {
  const depths = set.selections.map((selection) => {
    if (selection.kind === Kind.INLINE_FRAGMENT) return depthOf(selection.selectionSet, fragments, measured);
    if (selection.kind === Kind.FRAGMENT_SPREAD)
      return depthOfFragment(selection.name.value, fragments, measured);
    if (selection.name.value.startsWith('__')) return 0;
    return 1 + (selection.selectionSet ? depthOf(selection.selectionSet, fragments, measured) : 0);
  });
  return Math.max(0, ...depths);
}

function depthOfFragment(name: string, fragments: Fragments, measured: Map<string, number>): number {
  const known = measured.get(name);
  if (known !== undefined) return known;
  measured.set(name, 0);
  const fragment = fragments.get(name);
  const depth = fragment ? depthOf(fragment.selectionSet, fragments, measured) : 0;
  measured.set(name, depth);
  return depth;
}
