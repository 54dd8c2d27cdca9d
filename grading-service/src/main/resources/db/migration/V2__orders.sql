-- What is null after an erasure belongs to the body; the rest is the accounting of the order.
CREATE TABLE sleeve_order (
  tenant VARCHAR(64) NOT NULL,
  id VARCHAR(36) NOT NULL,
  style VARCHAR(64) NOT NULL,
  revision INTEGER NOT NULL,
  engine VARCHAR(40) NOT NULL,
  reference VARCHAR(80),
  size VARCHAR(80),
  remake_of VARCHAR(36),
  state VARCHAR(12) NOT NULL,
  taken_at TIMESTAMP WITH TIME ZONE NOT NULL,
  changed_at TIMESTAMP WITH TIME ZONE NOT NULL,
  request VARCHAR(600000),
  questions VARCHAR(600000),
  erased_at TIMESTAMP WITH TIME ZONE,
  PRIMARY KEY (tenant, id),
  FOREIGN KEY (tenant, style, revision) REFERENCES style_revision (tenant, id, revision)
);

CREATE INDEX sleeve_order_by_time ON sleeve_order (tenant, taken_at, id);
CREATE INDEX sleeve_order_by_style ON sleeve_order (tenant, style, revision);
CREATE INDEX sleeve_order_by_reference ON sleeve_order (tenant, reference);
CREATE INDEX sleeve_order_by_change ON sleeve_order (changed_at);

CREATE TABLE order_state (
  tenant VARCHAR(64) NOT NULL,
  order_id VARCHAR(36) NOT NULL,
  step INTEGER NOT NULL,
  state VARCHAR(12) NOT NULL,
  changed_at TIMESTAMP WITH TIME ZONE NOT NULL,
  changed_by VARCHAR(200) NOT NULL,
  PRIMARY KEY (tenant, order_id, step),
  FOREIGN KEY (tenant, order_id) REFERENCES sleeve_order (tenant, id)
);

-- Compressed; the address is the fingerprint of what is unpacked.
CREATE TABLE content (
  tenant VARCHAR(64) NOT NULL,
  sha256 VARCHAR(64) NOT NULL,
  size INTEGER NOT NULL,
  packed ${bytes} NOT NULL,
  PRIMARY KEY (tenant, sha256)
);

CREATE TABLE order_file (
  tenant VARCHAR(64) NOT NULL,
  order_id VARCHAR(36) NOT NULL,
  format VARCHAR(8) NOT NULL,
  sha256 VARCHAR(64) NOT NULL,
  PRIMARY KEY (tenant, order_id, format),
  FOREIGN KEY (tenant, order_id) REFERENCES sleeve_order (tenant, id),
  FOREIGN KEY (tenant, sha256) REFERENCES content (tenant, sha256)
);

CREATE INDEX order_file_by_content ON order_file (tenant, sha256);

CREATE TABLE idempotency (
  tenant VARCHAR(64) NOT NULL,
  idempotency_key VARCHAR(255) NOT NULL,
  request_sha256 VARCHAR(64) NOT NULL,
  order_id VARCHAR(36) NOT NULL,
  answer VARCHAR(600000),
  PRIMARY KEY (tenant, idempotency_key),
  FOREIGN KEY (tenant, order_id) REFERENCES sleeve_order (tenant, id)
);

CREATE INDEX idempotency_by_order ON idempotency (tenant, order_id);
