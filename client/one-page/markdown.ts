import { marked } from 'marked';

/** What may stand in an explanation: nothing that loads, runs or sends anything. */
const allowed = new Set(
  'A B BLOCKQUOTE BR CODE DEL EM H1 H2 H3 H4 H5 H6 HR I LI OL P PRE SPAN STRONG TABLE TBODY TD TH THEAD TR UL'.split(
    ' ',
  ),
);

/** HTML with only what may stand in an explanation; of attributes nothing but a link's target on the web, and classes. */
export function sanitized(html: string): string {
  const made = new DOMParser().parseFromString(html, 'text/html');
  for (const one of [...made.body.querySelectorAll('*')]) {
    if (!allowed.has(one.tagName)) {
      one.replaceWith(...(one.tagName === 'SCRIPT' || one.tagName === 'STYLE' ? [] : one.childNodes));
      continue;
    }
    for (const { name, value } of [...one.attributes]) {
      const isLink = name === 'href' && /^https:\/\//.test(value);
      if (!isLink && name !== 'class') one.removeAttribute(name);
    }
    if (one.tagName === 'A') {
      one.setAttribute('target', '_blank');
      one.setAttribute('rel', 'noopener noreferrer');
    }
  }
  return made.body.innerHTML;
}

/** An explanation in Markdown, to be shown in a document. */
export function markdownIn(where: Document, text: string): DocumentFragment {
  const html = sanitized(marked.parse(text, { async: false }));
  const made = new DOMParser().parseFromString(html, 'text/html');
  const fragment = where.createDocumentFragment();
  fragment.append(...made.body.childNodes);
  return fragment;
}
