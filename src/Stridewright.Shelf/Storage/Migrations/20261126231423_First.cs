using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Stridewright.Shelf.Storage.Migrations
{
    /// <inheritdoc />
    public partial class First : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Documents",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", maxLength: 32, nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 32, nullable: false),
                    Made = table.Column<long>(type: "INTEGER", nullable: false),
                    Deleted = table.Column<long>(type: "INTEGER", nullable: true),
                    Current = table.Column<int>(type: "INTEGER", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Documents", x => x.Id);
                }
            );

            migrationBuilder.CreateTable(
                name: "Tags",
                columns: table => new
                {
                    DocumentId = table.Column<string>(type: "TEXT", maxLength: 32, nullable: false),
                    Sought = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Word = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Tags", x => new { x.DocumentId, x.Sought });
                    table.ForeignKey(
                        name: "FK_Tags_Documents_DocumentId",
                        column: x => x.DocumentId,
                        principalTable: "Documents",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "Versions",
                columns: table => new
                {
                    DocumentId = table.Column<string>(type: "TEXT", maxLength: 32, nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    From = table.Column<int>(type: "INTEGER", nullable: false),
                    Saved = table.Column<long>(type: "INTEGER", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 300, nullable: true),
                    Sitting = table.Column<string>(type: "TEXT", maxLength: 32, nullable: true),
                    IsBeside = table.Column<bool>(type: "INTEGER", nullable: false),
                    Title = table.Column<string>(type: "TEXT", maxLength: 300, nullable: false),
                    Sought = table.Column<string>(type: "TEXT", maxLength: 300, nullable: false),
                    Key = table.Column<string>(type: "TEXT", maxLength: 32, nullable: true),
                    Metre = table.Column<string>(type: "TEXT", maxLength: 16, nullable: true),
                    Effort = table.Column<double>(type: "REAL", nullable: true),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Versions", x => new { x.DocumentId, x.Number });
                    table.ForeignKey(
                        name: "FK_Versions_Documents_DocumentId",
                        column: x => x.DocumentId,
                        principalTable: "Documents",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade
                    );
                }
            );

            migrationBuilder.CreateIndex(name: "IX_Documents_Kind", table: "Documents", column: "Kind");

            migrationBuilder.CreateIndex(name: "IX_Tags_Sought", table: "Tags", column: "Sought");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "Tags");

            migrationBuilder.DropTable(name: "Versions");

            migrationBuilder.DropTable(name: "Documents");
        }
    }
}
