import type { Procedure } from '../../core/procedure/procedure';
import type { OnUi } from '../events';

export type ProcedureReaderProps = { readonly procedure: Procedure };
export function ProcedureReader({ procedure }: ProcedureReaderProps & { readonly on: OnUi }) {
  return (
    <main class="page">
      <h1>{procedure.title}</h1>
    </main>
  );
}
