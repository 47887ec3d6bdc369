-- What a tablet holds for an adult: a pass that can add looks and read nothing, and the key its entries are sealed with.

create table tablet_pass (
    district_id int not null references district,
    pass_id     uuid not null default gen_random_uuid(),
    adult_id    uuid not null,
    class_id    uuid not null,
    device_id   uuid not null,
    label       text not null default '' check (length(label) <= 200),
    token_hash  bytea not null check (octet_length(token_hash) = 32),
    created_at  timestamptz not null default clock_timestamp(),
    expires_at  timestamptz not null,
    revoked_at  timestamptz,
    primary key (district_id, pass_id),
    constraint tablet_pass_token_once unique (district_id, token_hash),
    constraint tablet_pass_of_adult foreign key (district_id, adult_id) references adult,
    constraint tablet_pass_of_class foreign key (district_id, class_id) references classroom
);
create index tablet_pass_by_adult on tablet_pass (district_id, adult_id, created_at desc);
comment on table tablet_pass is 'Lets one tablet deliver the looks one adult made in one class, without a session; opens nothing to read';
comment on column tablet_pass.district_id is 'District the row belongs to';
comment on column tablet_pass.pass_id is 'Made here';
comment on column tablet_pass.adult_id is 'Whose looks it may add';
comment on column tablet_pass.class_id is 'Class of the children it may add looks at';
comment on column tablet_pass.device_id is 'Made by the browser at random; tells the tablets of one adult apart';
comment on column tablet_pass.label is 'What the browser calls itself, so that the adult knows the tablet again';
comment on column tablet_pass.token_hash is 'SHA-256 of the token; the token itself is on the tablet alone';
comment on column tablet_pass.created_at is 'When it was issued';
comment on column tablet_pass.expires_at is 'Fourteen days later; afterwards it is refused';
comment on column tablet_pass.revoked_at is 'When the adult ended it; null = never';
call guard('tablet_pass', false);
grant update (revoked_at) on tablet_pass to ${app_role};

create table tablet_key (
    district_id int not null references district,
    key_id      uuid not null,
    adult_id    uuid not null,
    device_id   uuid not null,
    wrapped     bytea not null,
    created_at  timestamptz not null default clock_timestamp(),
    expires_at  timestamptz not null,
    primary key (district_id, key_id),
    constraint tablet_key_of_adult foreign key (district_id, adult_id) references adult
);
create index tablet_key_by_adult on tablet_key (district_id, adult_id, device_id, created_at desc);
comment on table tablet_key is 'Keys that tablets seal looks with, kept so that the server can open what a tablet no longer can';
comment on column tablet_key.district_id is 'District the row belongs to';
comment on column tablet_key.key_id is 'Made here; stands in the clear on whatever was sealed with it';
comment on column tablet_key.adult_id is 'Whose looks it seals';
comment on column tablet_key.device_id is 'Tablet it was issued to';
comment on column tablet_key.wrapped is 'The key under a secret that lies outside the store: nonce of 12 bytes, then AES-GCM';
comment on column tablet_key.created_at is 'When it was issued';
comment on column tablet_key.expires_at is 'Fourteen days later the tablet drops it; the server goes on opening what it sealed';
call guard('tablet_key', true);
