/** The host's rules as a table: each with its value and where it is written. A new rule enters whole. */
import { useSignal } from '@preact/signals';
import type { GroupForm, NamedField } from '../../../papers/fields.ts';
import { FieldChoice } from '../../parts/form/field-choice.tsx';
import { Group } from '../../parts/form/group.tsx';
import { HelpList, HelpText } from '../../parts/form/help.tsx';
import { FieldInput } from '../../parts/form/inputs.tsx';
import { isGroup } from '../../parts/form/path.ts';
import { type Slot, usePaperSlot } from '../../parts/form/slot.tsx';
import { fieldWords } from '../../parts/form/words.ts';
import { edit, type Json, settings } from '../../state/session.ts';

interface Props {
  readonly json: unknown;
  readonly form: GroupForm;
}

const isRule = (field: NamedField): boolean =>
  field.is.form === 'group' &&
  ['value', 'source'].every((key) => (field.is as GroupForm).fields.some((f) => f.key === key));

const partOf = (field: NamedField, key: string): NamedField =>
  (field.is as GroupForm).fields.find((f) => f.key === key) as NamedField;

export function HostRules({ json, form }: Props) {
  const { wording } = settings.value;
  const host: Json = isGroup(json) ? json : {};
  const rules = form.fields.filter(isRule);
  const given = rules.filter((r) => host[r.key] !== undefined);
  return (
    <>
      <Group json={json} form={form} path={['host']} without={rules.map((r) => r.key)} />
      <div class="row-table">
        <table class="rows rules" aria-label="rules">
          <thead>
            <tr>
              <th scope="col">rule</th>
              <th scope="col">value</th>
              <th scope="col">where it is written</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {given.map((rule) => (
              <tr key={rule.key}>
                <th scope="row">{fieldWords(rule, wording)}</th>
                {(['value', 'source'] as const).map((key) => (
                  <td key={key} data-label={key === 'value' ? 'value' : 'where it is written'}>
                    <RuleField rule={rule} part={key} json={(host[rule.key] as Json)[key]} />
                  </td>
                ))}
                <td class="row-tools">
                  <button
                    type="button"
                    aria-label={`Take out the rule ${fieldWords(rule, wording)}`}
                    onClick={() => edit(['host', rule.key], undefined)}
                  >
                    Take out
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        <HelpList fields={given} title="What the rules mean" />
      </div>
      <NewRule rules={rules.filter((r) => host[r.key] === undefined)} />
    </>
  );
}

interface RuleFieldProps {
  readonly rule: NamedField;
  readonly part: 'value' | 'source';
  readonly json: unknown;
}

function RuleField({ rule, part, json }: RuleFieldProps) {
  const slot = usePaperSlot(['host', rule.key, part], {
    label: `${part === 'value' ? '' : 'source of '}${fieldWords(rule, settings.value.wording)}`,
    labelled: false,
    json,
    optional: false,
  });
  return <FieldInput slot={slot} is={partOf(rule, part).is} />;
}

function NewRule({ rules }: { readonly rules: readonly NamedField[] }) {
  const key = useSignal('');
  const draft = useSignal<Json>({});
  const rule = rules.find((r) => r.key === key.value);
  const begin = (next: string): void => {
    key.value = next;
    const yes = rules.find((r) => r.key === next);
    draft.value = yes && partOf(yes, 'value').is.form === 'yes' ? { value: true } : {};
  };
  const ready = ['value', 'source'].every((k) => draft.value[k] !== undefined && draft.value[k] !== '');
  const slot = (part: 'value' | 'source'): Slot => {
    const set = (value: unknown): void => {
      draft.value = { ...draft.value, [part]: value };
    };
    return {
      id: `new-rule-${part}`,
      label: part === 'value' ? 'value of the new rule' : 'source of the new rule',
      labelled: true,
      json: draft.value[part],
      optional: false,
      set,
      setTyping: set,
    };
  };
  return (
    <section class="new-rule" aria-label="A rule more">
      <div class="field add-field">
        <label for="new-rule">Add a rule</label>
        <FieldChoice id="new-rule" chosen={key.value} fields={rules} onPick={begin} />
      </div>
      {rule && (
        <>
          <HelpText field={rule} />
          {(['value', 'source'] as const).map((part) => (
            <div class="field" key={part}>
              <label for={`new-rule-${part}`}>{part === 'value' ? 'value' : 'where it is written'}</label>
              <FieldInput slot={slot(part)} is={partOf(rule, part).is} />
            </div>
          ))}
          <p class="row">
            <button
              type="button"
              class="main"
              disabled={!ready}
              onClick={() => {
                edit(['host', rule.key], draft.value);
                begin('');
              }}
            >
              Add this rule
            </button>
            {!ready && <span>A rule needs its value and where it is written.</span>}
          </p>
        </>
      )}
    </section>
  );
}
