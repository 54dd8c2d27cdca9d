-- Widths count UTF-16 units on one database and characters on the other, so texts have twice the room that requests allow.
CREATE TABLE style (
  tenant VARCHAR(64) NOT NULL,
  id VARCHAR(64) NOT NULL,
  revision INTEGER NOT NULL,
  archived BOOLEAN NOT NULL,
  PRIMARY KEY (tenant, id)
);

CREATE TABLE style_revision (
  tenant VARCHAR(64) NOT NULL,
  id VARCHAR(64) NOT NULL,
  revision INTEGER NOT NULL,
  name VARCHAR(200) NOT NULL,
  body VARCHAR(600000) NOT NULL,
  sha256 VARCHAR(64) NOT NULL,
  made_at TIMESTAMP WITH TIME ZONE NOT NULL,
  made_by VARCHAR(200) NOT NULL,
  PRIMARY KEY (tenant, id, revision),
  FOREIGN KEY (tenant, id) REFERENCES style (tenant, id) ON DELETE CASCADE
);

CREATE TABLE audit_entry (
  number BIGINT GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  tenant VARCHAR(64) NOT NULL,
  at TIMESTAMP WITH TIME ZONE NOT NULL,
  who VARCHAR(200) NOT NULL,
  what VARCHAR(40) NOT NULL,
  subject VARCHAR(200) NOT NULL
);

CREATE INDEX audit_entry_tenant ON audit_entry (tenant, number);
