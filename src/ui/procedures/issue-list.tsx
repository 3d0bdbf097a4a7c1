import type { ToldIssue } from '../../core/procedure/finding-words';
import { ScrollArea } from '../scroll-area';
import { useWords } from '../words/words-context';
import { excerptsOf } from './excerpts';
import { jumpTo } from './jump';
import './issue-list.css';

type IssueListProps = {
  readonly source: string;
  readonly issues: readonly ToldIssue[];
  /** Every line of the document, not only those around issues. */
  readonly isWhole: boolean;
};

/** What the checker found, each under the line of the document it is about. */
export function IssueList({ source, issues, isWhole }: IssueListProps) {
  const w = useWords();
  const faulty = [...new Set(issues.map(({ line }) => line))].sort((a, b) => a - b);
  return (
    <>
      {isWhole && (
        <div class="procedure-actions">
          {faulty.map((line) => (
            <button key={line} type="button" class="button button-plain" onClick={() => jumpTo(`line-${line}`)}>
              {w('issue-line', { line })}
            </button>
          ))}
        </div>
      )}
      <ScrollArea class="issues" label={w('issues')}>
        {excerptsOf(source, issues, isWhole ? Number.POSITIVE_INFINITY : undefined).map((run) => (
          <div key={run[0]?.number} class="issues-run">
            {run.map((line) => (
              <div key={line.number} id={`line-${line.number}`} tabIndex={-1}>
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
    </>
  );
}
