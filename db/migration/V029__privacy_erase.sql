-- Erasure of a child: what is left of it, and what the eraser may put back where a row tells of several children.

create table erasure (
    district_id int not null references district,
    erasure_id  uuid not null default gen_random_uuid(),
    key_digest  text not null check (key_digest ~ '^[0-9a-f]{64}$'),
    why         text not null check (why in ('family_asked', 'retention_ended', 'entered_wrongly', 'law')),
    ordered_by  uuid,
    row_count   int not null check (row_count > 0),
    erased_at   timestamptz not null default clock_timestamp(),
    primary key (district_id, erasure_id),
    constraint erasure_by_adult foreign key (district_id, ordered_by) references adult
);
create index erasure_by_key on erasure (district_id, key_digest);
comment on table erasure is 'Proof that all records on a child were erased; names nobody';
comment on column erasure.district_id is 'District the row belongs to';
comment on column erasure.erasure_id is 'Made here';
comment on column erasure.key_digest is 'HMAC-SHA-256 of the school''s id of the child under a secret of the home, so that a look that comes late is known and refused; nothing without the secret';
comment on column erasure.why is 'family_asked, retention_ended, entered_wrongly or law';
comment on column erasure.ordered_by is 'The school lead; null when it was done at the terminal of the machine';
comment on column erasure.row_count is 'Rows removed';
comment on column erasure.erased_at is 'When; looks at the child made before are not taken any more';
call guard('erasure', true);
revoke insert on erasure from ${app_role};
grant insert on erasure to ${eraser_role};

-- A seal and a lesson's choice hold several children: the eraser writes them again without the one.
alter table review_seal add column first_digest text check (first_digest ~ '^[0-9a-f]{64}$');
comment on column review_seal.first_digest is 'Digest the review was sealed with, when a child was erased from it since; null otherwise';
grant insert on review_seal, lesson_choice to ${eraser_role};
