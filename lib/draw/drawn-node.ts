/**
 * The few parts of a document that the drawing library writes to, as light as they can be: a drawing has thousands of
 * elements, none of which hears events, is styled or searched for.
 */
export class DrawnNode {
  readonly nodeType: number;
  readonly nodeName: string;
  parentNode: DrawnNode | null = null;

  constructor(nodeType: number, nodeName: string) {
    this.nodeType = nodeType;
    this.nodeName = nodeName;
  }
}

/** Words of an element. */
export class DrawnWords extends DrawnNode {
  readonly words: string;

  constructor(words: string) {
    super(3, '#text');
    this.words = words;
  }
}

/** An element with its attributes, in the order in which they were first set. */
export class DrawnElement extends DrawnNode {
  readonly values = new Map<string, string>();
  readonly childNodes: (DrawnElement | DrawnWords)[] = [];

  constructor(nodeName: string) {
    super(1, nodeName);
  }

  get children(): DrawnElement[] {
    return this.childNodes.filter((child) => child instanceof DrawnElement);
  }

  get lastChild(): DrawnElement | DrawnWords | undefined {
    return this.childNodes.at(-1);
  }

  get textContent(): string {
    return this.childNodes
      .map((child) => (child instanceof DrawnElement ? child.textContent : child.words))
      .join('');
  }

  set textContent(words: string) {
    this.childNodes.length = 0;
    if (words !== '') this.appendChild(new DrawnWords(words));
  }

  hasChildNodes(): boolean {
    return this.childNodes.length > 0;
  }

  hasAttribute(name: string): boolean {
    return this.values.has(name);
  }

  getAttribute(name: string): string | null {
    return this.values.get(name) ?? null;
  }

  setAttribute(name: string, value: string): void {
    this.values.set(name, value);
  }

  setAttributeNS(_namespace: string, name: string, value: string): void {
    this.values.set(name, value);
  }

  removeAttribute(name: string): void {
    this.values.delete(name);
  }

  appendChild<T extends DrawnElement | DrawnWords>(child: T): T {
    child.parentNode = this;
    this.childNodes.push(child);
    return child;
  }

  removeChild<T extends DrawnElement | DrawnWords>(child: T): T {
    const place = this.childNodes.lastIndexOf(child);
    if (place >= 0) this.childNodes.splice(place, 1);
    child.parentNode = null;
    return child;
  }
}

/** What the drawing library asks a window and its document for. */
export const drawnWindow = { Node: DrawnNode, SVGElement: DrawnElement };
export const drawnDocument = {
  createElementNS: (_namespace: string, name: string): DrawnElement => new DrawnElement(name),
  createTextNode: (words: string): DrawnWords => new DrawnWords(words),
};
