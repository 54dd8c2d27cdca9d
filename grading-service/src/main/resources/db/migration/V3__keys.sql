-- The secret half of a key is not kept, only its fingerprint.
CREATE TABLE api_key (
  id VARCHAR(32) NOT NULL PRIMARY KEY,
  tenant VARCHAR(64) NOT NULL,
  name VARCHAR(200) NOT NULL,
  scopes VARCHAR(60) NOT NULL,
  secret_sha256 VARCHAR(64) NOT NULL,
  made_at TIMESTAMP WITH TIME ZONE NOT NULL,
  expires_at TIMESTAMP WITH TIME ZONE NOT NULL
);

CREATE INDEX api_key_tenant ON api_key (tenant, made_at);
