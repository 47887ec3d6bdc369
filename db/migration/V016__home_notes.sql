-- Pages that go home. Append only: an edit is a new version, and what was approved stays as it was.

create table home_note (
    district_id int not null references district,
    note_id     uuid not null default gen_random_uuid(),
    child_id    uuid not null,
    language    text not null check (language in ('en', 'es')),
    version     int not null check (version > 0),
    state       text not null check (state in ('draft', 'approved')),
    note_on     date not null,
    parts       jsonb not null,
    confirmed   jsonb not null default '[]',
    written_by  uuid not null,
    written_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, note_id),
    constraint home_note_version unique (district_id, child_id, language, version),
    constraint home_note_of_child foreign key (district_id, child_id) references child,
    constraint home_note_by_adult foreign key (district_id, written_by) references adult
);
comment on table home_note is 'A version of the page on one child that goes home, in one language';
comment on column home_note.district_id is 'District the row belongs to';
comment on column home_note.note_id is 'Made here';
comment on column home_note.child_id is 'The one child it tells of';
comment on column home_note.language is 'en or es';
comment on column home_note.version is '1 for the first kept version of this child and language';
comment on column home_note.state is 'draft, or approved by the adult who wrote the version';
comment on column home_note.note_on is 'School day it was written on, printed on the page';
comment on column home_note.parts is 'Sentences of each part of the page, and the days of the picture of growth';
comment on column home_note.confirmed is 'Words that usually stay at school and that the adult said were meant';
comment on column home_note.written_by is 'Who wrote or approved it';
comment on column home_note.written_at is 'When';
call guard('home_note', true);
