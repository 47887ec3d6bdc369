-- The letter to the family when extra help starts. Append only: an edit is a new version.

create table help_letter (
    district_id int not null references district,
    letter_id   uuid not null default gen_random_uuid(),
    child_id    uuid not null,
    plan_id     uuid not null,
    language    text not null check (language in ('en', 'es')),
    version     int not null check (version > 0),
    state       text not null check (state in ('draft', 'approved')),
    letter_on   date not null,
    lines       jsonb not null,
    school_text text not null default '' check (length(school_text) <= 4000),
    confirmed   jsonb not null default '[]',
    written_by  uuid not null,
    written_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, letter_id),
    constraint help_letter_version unique (district_id, plan_id, language, version),
    constraint help_letter_of_child foreign key (district_id, child_id) references child,
    constraint help_letter_of_plan foreign key (district_id, plan_id) references plan,
    constraint help_letter_by_adult foreign key (district_id, written_by) references adult
);
create index help_letter_by_child on help_letter (district_id, child_id);
comment on table help_letter is 'A version of the letter that tells a family of extra help, in one language';
comment on column help_letter.district_id is 'District the row belongs to';
comment on column help_letter.letter_id is 'Made here';
comment on column help_letter.child_id is 'The one child it tells of';
comment on column help_letter.plan_id is 'The plan of extra help it tells of';
comment on column help_letter.language is 'en or es';
comment on column help_letter.version is '1 for the first kept version of this plan and language';
comment on column help_letter.state is 'draft, or approved by the adult who wrote the version';
comment on column help_letter.letter_on is 'School day it was written on, printed on it';
comment on column help_letter.lines is 'Its sentences, in order';
comment on column help_letter.school_text is 'What the school adds in its own words, such as the law it goes by';
comment on column help_letter.confirmed is 'Words that usually stay at school and that the adult said were meant';
comment on column help_letter.written_by is 'Who wrote or approved it';
comment on column help_letter.written_at is 'When';
call guard('help_letter', true);
