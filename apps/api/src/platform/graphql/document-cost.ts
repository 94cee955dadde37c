import {
  getNamedType,
  getNullableType,
  isCompositeType,
  isInterfaceType,
  isListType,
  isObjectType,
  Kind,
  type ASTVisitor,
  type FieldNode,
  type GraphQLNamedType,
  type GraphQLSchema,
  type SelectionSetNode,
  type ValidationContext,
} from 'graphql';
import { fragmentsOf, tooExpensive, type Fragments } from './document-limits.js';
import { LIMITS } from './limits.js';

/**
 * Limits how many objects an answer may hold. The estimate is of the document alone, so that it is made once for each
 * document: a page size that comes as a variable counts as the largest page.
 */
export function Cost(context: ValidationContext): ASTVisitor {
  return {
    OperationDefinition(operation) {
      const estimate = new Estimate(context.getSchema(), fragmentsOf(context.getDocument()));
      const root = context.getSchema().getRootType(operation.operation) ?? undefined;
      const cost = estimate.ofSelections(operation.selectionSet, root, null);
      if (cost > LIMITS.cost) {
        context.reportError(
          tooExpensive(
            `The answer could hold ${cost} objects, at most ${LIMITS.cost} are allowed; ask for smaller pages.`,
          ),
        );
      }
    },
  };
}

/** `page`: the page size asked of the connection whose selections these are; null elsewhere. */
type Page = number | null;

class Estimate {
  private readonly measured = new Map<string, number>();

  constructor(
    private readonly schema: GraphQLSchema,
    private readonly fragments: Fragments,
  ) {}

  ofSelections(set: SelectionSetNode, type: GraphQLNamedType | undefined, page: Page): number {
    let cost = 0;
    for (const selection of set.selections) {
      if (selection.kind === Kind.FIELD) cost += this.ofField(selection, type, page);
      else if (selection.kind === Kind.FRAGMENT_SPREAD) cost += this.ofFragment(selection.name.value, page);
      else {
        const on = selection.typeCondition ? this.schema.getType(selection.typeCondition.name.value) : type;
        cost += this.ofSelections(selection.selectionSet, on, page);
      }
    }
    return cost;
  }

  private ofFragment(name: string, page: Page): number {
    const key = `${name}/${page}`;
    const known = this.measured.get(key);
    if (known !== undefined) return known;
    this.measured.set(key, 0);
    const fragment = this.fragments.get(name);
    if (!fragment) return 0;
    const type = this.schema.getType(fragment.typeCondition.name.value);
    const cost = this.ofSelections(fragment.selectionSet, type, page);
    this.measured.set(key, cost);
    return cost;
  }

  private ofField(node: FieldNode, parent: GraphQLNamedType | undefined, page: Page): number {
    if (!isObjectType(parent) && !isInterfaceType(parent)) return 0;
    const field = parent.getFields()[node.name.value];
    if (!field || !node.selectionSet) return 0;
    const type = getNamedType(field.type);
    if (!isCompositeType(type)) return 0;
    const ownPage = field.args.some((arg) => arg.name === 'first') ? pageOf(node) : null;
    const each = 1 + this.ofSelections(node.selectionSet, type, ownPage);
    if (!isListType(getNullableType(field.type))) return each;
    const stated = field.extensions.complexity;
    return each * (page ?? (typeof stated === 'number' ? stated : LIMITS.plainList));
  }
}

/** What the document asks for; a variable may be anything up to the largest page. */
function pageOf(node: FieldNode): number {
  const first = node.arguments?.find((argument) => argument.name.value === 'first')?.value;
  return first?.kind === Kind.INT ? Math.min(Math.max(0, Number(first.value)), LIMITS.page) : LIMITS.page;
}
