CREATE TABLE key_origin (
  key_id VARCHAR(32) NOT NULL,
  origin VARCHAR(400) NOT NULL,
  PRIMARY KEY (key_id, origin),
  FOREIGN KEY (key_id) REFERENCES api_key (id)
);

CREATE INDEX key_origin_by_origin ON key_origin (origin);
