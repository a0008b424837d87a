import { element } from '../../page/element';

/** `StatusBarItem`: a few words at the foot of the page, with what a press does. */
export function statusItem(id: string, run: (command: string) => void) {
  let command = '';
  const button = element('button', {
    type: 'button',
    class: 'status-item',
    'data-id': id,
    onclick: () => run(command),
  });
  button.hidden = true;
  document.getElementById('status')?.append(button);
  return {
    name: '',
    backgroundColor: undefined,
    set text(text: string) {
      button.textContent = text.replace(/\$\([\w~-]+\) ?/g, '');
    },
    set tooltip(tooltip: string) {
      button.title = tooltip;
    },
    set command(to: string) {
      command = to;
    },
    set accessibilityInformation({ label }: { label: string }) {
      button.setAttribute('aria-label', `${button.textContent}. ${label}`);
    },
    show() {
      button.hidden = false;
    },
    hide() {
      button.hidden = true;
    },
    dispose() {
      button.remove();
    },
  };
}
