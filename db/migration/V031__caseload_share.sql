-- What of a child is shared, and what those who share it say to each other.

alter table caseload_grant add column plan boolean not null default true;
alter table caseload_grant add column notes boolean not null default true;
comment on column caseload_grant.plan is 'Whether plans and their sessions are shared beside the looks';
comment on column caseload_grant.notes is 'Whether notes home are shared beside the looks';

create table caseload_comment (
    district_id int not null references district,
    comment_id  uuid not null default gen_random_uuid(),
    child_id    uuid not null,
    words       text not null check (length(words) between 1 and 2000),
    written_by  uuid not null,
    written_at  timestamptz not null default clock_timestamp(),
    primary key (district_id, comment_id),
    constraint caseload_comment_on_child foreign key (district_id, child_id) references child,
    constraint caseload_comment_by_adult foreign key (district_id, written_by) references adult
);
create index caseload_comment_by_child on caseload_comment (district_id, child_id, written_at);
comment on table caseload_comment is 'What the adults around a child write to each other; read by everybody who sees the child';
comment on column caseload_comment.district_id is 'District the row belongs to';
comment on column caseload_comment.comment_id is 'Made by the page, so that the same words sent twice stand there once';
comment on column caseload_comment.child_id is 'The child it is about';
comment on column caseload_comment.words is 'As written';
comment on column caseload_comment.written_by is 'Who wrote it';
comment on column caseload_comment.written_at is 'When';
call guard('caseload_comment', true);
