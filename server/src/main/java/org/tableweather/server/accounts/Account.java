package org.tableweather.server.accounts;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

/** Somebody who may write. */
@Entity
@Table(name = "account")
class Account extends PanacheEntityBase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    private Long id;

    private String name;
    private String role;

    @Column(name = "created_at")
    private Instant createdAt;

    Account() {}

    Account(String name, Role role, Instant createdAt) {
        this.name = name;
        this.role = role.schemaName();
        this.createdAt = createdAt;
    }

    long id() {
        return id;
    }

    String name() {
        return name;
    }

    Role role() {
        return Role.of(role);
    }

    Instant createdAt() {
        return createdAt;
    }
}
