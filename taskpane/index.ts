import { PourPane } from './pane.ts';

customElements.define('pour-pane', PourPane);

declare global {
  interface HTMLElementTagNameMap {
    'pour-pane': PourPane;
  }
}
