import type { ToldIssue } from '../../core/procedure/finding-words';
import { ScrollArea } from '../scroll-area';
import { useWords } from '../words/words-context';
import { excerptsOf } from './excerpts';
import './issue-list.css';

type IssueListProps = { readonly source: string; readonly issues: readonly ToldIssue[] };

/** What the checker found, each under the line of the document it is about. */
export function IssueList({ source, issues }: IssueListProps) {
  const w = useWords();
  return (
    <ScrollArea class="issues" label={w('issues')}>
      {excerptsOf(source, issues).map((run) => (
        <div key={run[0]?.number} class="issues-run">
          {run.map((line) => (
            <div key={line.number}>
              <code class="issues-line">
                <span class="issues-number">{line.number}</span>
                {line.text}
              </code>
              {line.issues.map((issue) => (
                <div key={`${issue.column} ${issue.code}`} class="issue">
                  <p>
                    <strong>{w(issue.severity === 'error' ? 'issue-error' : 'issue-warning')}</strong> {issue.message}
                  </p>
                  {issue.given !== '' && <p class="quiet">{w('issue-given', { given: issue.given })}</p>}
                  <p>{issue.mend}</p>
                  <p class="quiet">
                    {w('issue-place', {
                      file: issue.file,
                      line: issue.line,
                      column: issue.column,
                      code: issue.code,
                    })}
                  </p>
                </div>
              ))}
            </div>
          ))}
        </div>
      ))}
    </ScrollArea>
  );
}
