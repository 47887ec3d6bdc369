-- What families ask of the records on their child: to see them (34 CFR 99.10) or to have them amended (99.20 to 99.22).
-- Append only. While a request is open, nothing on the child is erased.

create table family_request (
    district_id int not null references district,
    request_id  uuid not null default gen_random_uuid(),
    child_id    uuid not null,
    kind        text not null check (kind in ('inspect', 'amend')),
    asked_on    date not null,
    words       text not null default '' check (length(words) <= 4000),
    recorded_by uuid not null,
    recorded_at timestamptz not null default clock_timestamp(),
    primary key (district_id, request_id),
    constraint family_request_on_child foreign key (district_id, child_id) references child,
    constraint family_request_by_adult foreign key (district_id, recorded_by) references adult,
    constraint family_request_says_what check (kind <> 'amend' or length(words) > 0)
);
create index family_request_by_child on family_request (district_id, child_id, asked_on);
comment on table family_request is 'A family asks to see the records on a child, or to have something in them amended';
comment on column family_request.district_id is 'District the row belongs to';
comment on column family_request.request_id is 'Made here';
comment on column family_request.child_id is 'The child';
comment on column family_request.kind is 'inspect or amend';
comment on column family_request.asked_on is 'Day the family asked; it may lie before the day it was written down';
comment on column family_request.words is 'What is wrong or misleading, and how it should read; empty for a wish to see everything';
comment on column family_request.recorded_by is 'Who wrote it down';
comment on column family_request.recorded_at is 'When it was written down';
call guard('family_request', true);

create table family_request_step (
    district_id int not null references district,
    request_id  uuid not null,
    step        int not null check (step > 0),
    kind        text not null check (kind in ('inspected', 'amended', 'refused', 'hearing_asked', 'hearing_amended',
                  'hearing_refused', 'statement', 'withdrawn')),
    done_on     date not null,
    words       text not null default '' check (length(words) <= 4000),
    recorded_by uuid not null,
    recorded_at timestamptz not null default clock_timestamp(),
    primary key (district_id, request_id, step),
    constraint family_request_step_of_request foreign key (district_id, request_id) references family_request,
    constraint family_request_step_by_adult foreign key (district_id, recorded_by) references adult,
    constraint family_request_step_says_why check (kind in ('inspected', 'hearing_asked', 'withdrawn') or length(words) > 0)
);
comment on table family_request_step is 'What became of a request of a family, step by step';
comment on column family_request_step.district_id is 'District the row belongs to';
comment on column family_request_step.request_id is 'The request';
comment on column family_request_step.step is '1 for the first; two adults cannot take the same';
comment on column family_request_step.kind is 'What happened';
comment on column family_request_step.done_on is 'Day it happened';
comment on column family_request_step.words is 'Reason of a decision, or the statement of the family as it was given';
comment on column family_request_step.recorded_by is 'Who wrote it down';
comment on column family_request_step.recorded_at is 'When it was written down';
call guard('family_request_step', true);

-- A family may also ask that the records go along to the school a child moves to (34 CFR 99.31 (a)(2), 99.34).
alter table access_entry drop constraint access_entry_party_check;
alter table access_entry add constraint access_entry_party_check check (party in ('staff', 'family', 'school'));
comment on column access_entry.party is 'For whom it was made: staff of the school, the family, or the school a child moves to';
