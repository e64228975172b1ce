/**
 * The six tables, the same in both databases. Texts and whole numbers only, and sealed bytes.
 *
 * @param bytes the database's name for a column of bytes
 */
export function schema(bytes: 'blob' | 'bytea'): string[] {
  return [
    `create table if not exists space (
       id text primary key, since bigint not null, bytes bigint not null)`,
    `create table if not exists access (
       id text primary key, token_hash text not null unique, space text not null,
       device text not null, role text not null, label text not null, since bigint not null,
       last_seen bigint not null, removed integer not null, invite text not null)`,
    `create index if not exists access_of_space on access (space)`,
    `create table if not exists invite (
       id text primary key, secret_hash text not null, space text not null, role text not null,
       since bigint not null, until bigint not null, used_by text not null,
       revoked integer not null)`,
    `create index if not exists invite_of_space on invite (space)`,
    `create table if not exists device (
       space text not null, device text not null, head bigint not null, at bigint not null,
       primary key (space, device))`,
    `create table if not exists parcel (
       space text not null, device text not null, first bigint not null, last bigint not null,
       body ${bytes} not null, primary key (space, device, last))`,
    `create table if not exists photo (
       space text not null, id text not null, body ${bytes} not null, primary key (space, id))`
  ];
}
