import type { SheetContent, SheetHost } from '../../hosts/sheetHost';
import type { Review } from '../../review/reviewFinding';
import { serialOf } from '../../worksheets/check/serialDate';
import type { Job } from '../../worksheets/job/job';
import { todayText } from '../../worksheets/record/today';
import { button, element } from '../dom';
import { readAll } from '../sheetWatch';
import { issueFileName, speaksAgainst } from './issue';
import { askToIssue } from './issueDialog';
import type { JobDesk } from './jobDesk';
import { isReadyToSign, signatureState, type SignatureState } from './signature';
import { missingList } from './stepParts';
import { isOver } from './stepWords';

/** What signing and issuing need beyond the desk. */
export interface IssueParts {
  readonly host: Pick<SheetHost, 'sheets' | 'read' | 'write' | 'save'>;
  readonly review: (sheets: readonly SheetContent[]) => Review;
  readonly issueCopy: (file: Uint8Array) => Promise<Uint8Array>;
  /** Hands a file to the user. */
  readonly deliver: (name: string, bytes: Uint8Array) => Promise<void>;
}

/** Below the way: who signs and when, whether the workbook is as signed, and the copy that leaves the laboratory. */
export class SignIssue {
  readonly element: HTMLDetailsElement;
  private readonly state = element('span', { class: 'rp-issue-state', attributes: { id: 'job-signature-state' } });
  private readonly changed = element('div');
  private readonly by = element('input', { attributes: { id: 'job-signed-by', type: 'text', autocomplete: 'name', 'aria-describedby': 'job-sign-problem' } });
  private readonly on = element('input', { attributes: { id: 'job-signed-on', type: 'date', 'aria-describedby': 'job-sign-problem' } });
  private readonly reason = element('input', { attributes: { id: 'job-sign-reason', type: 'text', autocomplete: 'off', 'aria-describedby': 'job-sign-problem' } });
  private readonly reasonLine: HTMLElement;
  private readonly problem = element('p', { class: 'rp-refuse', attributes: { id: 'job-sign-problem', role: 'status' } });
  private readonly signButton = button('Sign the record', () => void this.sign());
  private readonly issueButton = button('Make the issue copy', () => void this.issue());
  private job: Job | undefined;
  private sheets: readonly SheetContent[] = [];
  private shown = '';
  private wasDue = false;

  constructor(private readonly desk: JobDesk, private readonly parts: IssueParts) {
    this.keep(this.by, 'job.signer');
    this.keep(this.reason, 'job.reason');
    this.on.value = todayText();
    this.reasonLine = line('Why it is signed again', this.reason);
    this.element = element('details', { class: 'rp-issue', children: [
      element('summary', { children: [element('span', { class: 'rp-issue-name', children: ['Sign and issue'] }), ' ', this.state] }),
      this.changed,
      line('Signed by', this.by), line('Date', this.on), this.reasonLine, this.problem,
      element('div', { class: 'rp-ways', children: [this.signButton, this.issueButton] }),
      element('p', { class: 'rp-help', children: ['Signing writes a Record sheet with every cell and a fingerprint of all. The issue copy holds results as values, locked, for people without this program; a workbook that is not signed, or differs since, is signed with it.'] }),
    ] });
  }

  show(job: Job, sheets: readonly SheetContent[]): void {
    this.job = job;
    this.sheets = sheets;
    const signature = signatureState(sheets, this.desk.functions);
    const toSign = isReadyToSign(job, sheets, this.desk.functions);
    const toIssue = toSign && job.items.every((item) => this.desk.functions.wayOf(job, item, sheets).every(isOver));
    this.signButton.className = toSign && !toIssue && !signature.isFresh ? 'rp-main' : '';
    this.issueButton.className = toIssue ? 'rp-main' : '';
    this.signButton.textContent = signature.isSigned ? 'Sign the record again' : 'Sign the record';
    // Opened when its time comes; before and after that it is the user's.
    if (toSign && !this.wasDue) this.element.open = true;
    this.wasDue = toSign;
    this.showSignature(signature);
  }

  private showSignature(signature: SignatureState): void {
    const key = JSON.stringify(signature);
    if (key === this.shown) return;
    this.shown = key;
    const { words, isSigned, changed } = signature;
    this.state.textContent = words;
    this.reasonLine.hidden = !isSigned;
    this.changed.replaceChildren(...missingList(changed, this.desk));
  }

  private async sign(): Promise<void> {
    if (!this.canSign()) return;
    await this.desk.do('Signing the record …', async () => {
      await this.writeRecord();
      return 'The record is signed.';
    });
  }

  private async issue(): Promise<void> {
    const { desk } = this;
    if (!signatureState(this.sheets, desk.functions).isFresh && !this.canSign()) return;
    await desk.do('Making the issue copy …', async () => {
      await desk.refresh();
      const { job } = this;
      if (!job) throw new Error('The workbook has no job.');
      const signature = signatureState(this.sheets, desk.functions);
      if (!signature.isFresh && !this.canSign()) return 'No copy is made.';
      const against = speaksAgainst(job, this.sheets, desk.functions, this.parts.review, signature);
      if (against.length > 0 && !(await this.desk.ask((place) => askToIssue(place, against)))) return 'No copy is made.';
      if (!signature.isFresh) await this.writeRecord();
      const name = issueFileName(job);
      await this.parts.deliver(name, await this.parts.issueCopy(await this.parts.host.save()));
      return `The issue copy “${name}” is made.`;
    });
    this.issueButton.focus();
  }

  /** What the workbook holds is read anew, so that the record misses nothing that was typed a moment ago. */
  private async writeRecord(): Promise<void> {
    const { functions, drafts } = this.desk;
    const sheets = await readAll(this.parts.host);
    const reason = this.reasonLine.hidden ? '' : this.reason.value.trim();
    const plan = functions.planRecord(sheets, { by: this.by.value.trim(), on: serialOf(this.on.value)!, version: functions.version, ...(reason === '' ? {} : { reason }) });
    await this.parts.host.write(plan, { replace: functions.readRecord(sheets)?.sheet === plan.name });
    drafts.drop('job.reason');
    this.reason.value = '';
  }

  private canSign(): boolean {
    const lacks = this.by.value.trim() === '' ? this.by : serialOf(this.on.value) === undefined ? this.on : undefined;
    this.problem.textContent = lacks === undefined ? '' : lacks === this.by ? 'Type the name of the person who signs.' : 'Type the date, like 2026-11-25.';
    lacks?.focus();
    return lacks === undefined;
  }

  private keep(input: HTMLInputElement, key: string): void {
    input.value = this.desk.drafts.words(key);
    input.addEventListener('input', () => this.desk.drafts.keep(key, input.value));
  }
}

function line(label: string, input: HTMLInputElement): HTMLElement {
  return element('div', { class: 'rp-words', children: [element('label', { class: 'rp-label', attributes: { for: input.id }, children: [label] }), input] });
}
